import { createElement, type ReactElement } from 'react'
import type { Drawing } from '../../src/lesson/model/drawing'

/** A drawing of a hand-out as wide as the pane allows; readers who do not see it hear the words. */
export function LessonDrawing(props: { readonly drawing: Drawing; readonly words: string }): ReactElement {
  const { width, height, shapes } = props.drawing
  return (
    <svg
      className="drawing"
      viewBox={`-0.5 -0.5 ${width + 1} ${height + 1}`}
      role="img"
      aria-label={props.words}
    >
      {shapes.map(({ shape, kind, ...rest }, index) => {
        const { text, ...numbers } = { text: undefined, ...rest }
        return createElement(shape, { key: index, className: kind, ...numbers }, text)
      })}
    </svg>
  )
}
