import { createElement, type ReactElement } from 'react'
import { drawPaper, type Drawing } from '../../src/lesson/model/drawing'
import { paperInWords } from '../../src/lesson/model/inWords'
import type { Paper } from '../../src/lesson/model/paper'
import './model.css'

/** Squared paper with a calculation on it; readers who do not see it hear what stands there. */
export function PaperDrawing({
  paper,
  title,
}: {
  readonly paper: Paper
  readonly title: string
}): ReactElement {
  return (
    <DrawingOnScreen
      className="paper"
      drawing={drawPaper(paper)}
      words={`${title}. ${paperInWords(paper)}`}
    />
  )
}

/** A drawing on screen, with what it shows in words. */
export function DrawingOnScreen(props: {
  readonly className: string
  readonly drawing: Drawing
  readonly words: string
}): ReactElement {
  const { className, drawing, words } = props
  const { width, height, shapes } = drawing
  return (
    <svg
      className={className}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={words}
    >
      {shapes.map(({ shape, kind, ...rest }, index) => {
        const { text, ...numbers } = { text: undefined, ...rest }
        // A figure written anew is a new element, so that it can appear.
        return createElement(shape, { key: `${index} ${text ?? ''}`, className: kind, ...numbers }, text)
      })}
    </svg>
  )
}
