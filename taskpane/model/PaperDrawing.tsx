import { createElement, type ReactElement } from 'react'
import { drawPaper } from '../../src/lesson/model/drawing'
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
  const { width, height, shapes } = drawPaper(paper)
  return (
    <svg
      className="paper"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`${title}. ${paperInWords(paper)}`}
    >
      {shapes.map(({ shape, kind, ...rest }, index) => {
        const { text, ...numbers } = { text: undefined, ...rest }
        // A figure written anew is a new element, so that it can appear.
        return createElement(shape, { key: `${index} ${text ?? ''}`, className: kind, ...numbers }, text)
      })}
    </svg>
  )
}
