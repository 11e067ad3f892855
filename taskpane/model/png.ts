import { printQuestion, type Question } from '../../src/arithmetic/question'
import { drawPaper } from '../../src/lesson/model/drawing'
import { paperInWords } from '../../src/lesson/model/inWords'
import type { Notation } from '../../src/lesson/model/notation'
import { paperAfter } from '../../src/lesson/model/paper'
import { svgFile } from '../../src/lesson/model/svg'
import type { Picture } from '../../src/office/model/picture'

/** Pixels to a unit of the drawing, so that it is sharp in print. */
const SCALE = 3
/** Points to a unit of the drawing: a square is 24 points, about 8.5 mm wide. */
const POINTS = 0.6

/** The paper after some steps as a PNG. */
export async function pictureOf(question: Question, step: number, notation: Notation): Promise<Picture> {
  const paper = paperAfter(question, step, notation)
  const drawing = drawPaper(paper)
  const image = new Image()
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgFile(drawing, SCALE))}`
  await image.decode()
  const canvas = document.createElement('canvas')
  canvas.width = drawing.width * SCALE
  canvas.height = drawing.height * SCALE
  const context = canvas.getContext('2d')
  if (!context) throw new Error('This browser cannot draw.')
  context.drawImage(image, 0, 0)
  const text = printQuestion(question)
  return {
    base64: canvas.toDataURL('image/png').replace(/^data:image\/png;base64,/, ''),
    width: drawing.width * POINTS,
    height: drawing.height * POINTS,
    name: `Columnwise ${text}`,
    altText: `${text} in columns. ${paperInWords(paper)}`,
  }
}
