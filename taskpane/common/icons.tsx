import type { ReactElement } from 'react'

/** A line drawing of 20 by 20 units in the colour of the text beside it. */
function drawn(path: string): ReactElement {
  return (
    <svg
      className="icon"
      viewBox="0 0 20 20"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.6"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
      focusable="false"
    >
      <path d={path} />
    </svg>
  )
}

export const UNDO = drawn('M7 4 3.5 7.5 7 11M3.5 7.5H12a4.25 4.25 0 0 1 0 8.5H7.5')
export const AGAIN = drawn('M15.5 7A6.2 6.2 0 1 0 16 11.5M15.8 3.2V7H12')
export const PEN = drawn('M4 16l.8-3.4L13.6 3.8l2.6 2.6-8.8 8.8L4 16ZM11.8 5.6l2.6 2.6')
export const TICK = drawn('M4 10.5 8.2 14.5 16 6')
export const CLOSE = drawn('M5 5l10 10M15 5 5 15')
export const BACK = drawn('M12.5 4 6.5 10l6 6')
export const ERASE = drawn('M8 16 3.6 11.6 11.2 4l5.2 5.2L9.6 16H16M7.4 7.8l5.2 5.2')
export const INBOX = drawn('M10 3v8M6.5 8 10 11.5 13.5 8M3.5 12v4.5h13V12')
export const SELECT = drawn('M3.5 8V3.5H8M12 3.5h4.5V8M16.5 12v4.5H12M8 16.5H3.5V12M7 7h6v6H7z')
export const NEXT = drawn('M7.5 4l6 6-6 6')
export const FIRST = drawn('M5.5 4v12M14 4 8 10l6 6')
export const LAST = drawn('M14.5 4v12M6 4l6 6-6 6')
export const SCREEN = drawn('M3 4h14v9H3zM10 13v3.5M6.5 16.5h7')
export const CELLS = drawn('M3.5 4h13v12h-13zM3.5 10h13M10 4v12')
export const PICTURE = drawn('M3.5 4h13v12h-13zM3.5 13.5l4-4 3.5 3.5 2.5-2.5 3 3M13 7.5v.1')
export const PRINT = drawn('M6 7.5V3.5h8v4M6 14H3.5V7.5h13V14H14M6 11.5h8v5H6z')
export const GEAR = drawn(
  'M8.4 4.5L8.7 2.5L11.3 2.5L11.6 4.5L12.8 5.0L14.4 3.8L16.2 5.6L15.0 7.2L15.5 8.4L17.5 8.7L17.5 11.3L15.5 11.6L15.0 12.8L16.2 14.4L14.4 16.2L12.8 15.0L11.6 15.5L11.3 17.5L8.7 17.5L8.4 15.5L7.2 15.0L5.6 16.2L3.8 14.4L5.0 12.8L4.5 11.6L2.5 11.3L2.5 8.7L4.5 8.4L5.0 7.2L3.8 5.6L5.6 3.8L7.2 5.0ZM12.4 10a2.4 2.4 0 1 1-4.8 0 2.4 2.4 0 0 1 4.8 0Z',
)
