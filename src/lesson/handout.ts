import type { PaperLine } from './model/grid'
import type { Notation } from './model/notation'
import type { Paper } from './model/paper'
import type { Stage } from './stages'
import type { Bar, Shown } from './stories/bars'

/**
 * Squares to work a question in: its number on the sheet, the question as printed, and how many squares across and down; above and
 * below them lines to fill in, by their names ('' for none). `given` is what already stands there, in place of empty squares; null for
 * nothing.
 */
export interface Room {
  readonly label: string
  readonly text: string
  readonly columns: number
  readonly rows: number
  readonly above: string
  readonly line: string
  readonly given: readonly PaperLine[] | null
}

/** A question with its written working, and what else there is to say of it: its estimate, its check. */
export interface Working {
  readonly label: string
  readonly text: string
  readonly paper: Paper
  readonly answer: string
  readonly notes: readonly string[]
}

/** A number triangle: its name on the sheet, the side total, numbers by place from the top corner clockwise, null where the pupil writes. */
export interface TriangleFigure {
  readonly label: string
  readonly total: number
  readonly numbers: readonly (number | null)[]
}

/** A cell of a grid: a text, and a small one below it where there is something to add. */
export interface GridCell {
  readonly text: string
  readonly note: string
}

/**
 * A piece of a sheet. `fields`: lines to fill in, by their names; `ticks`: sentences with a box each; `rooms`: questions with squared
 * paper, two side by side (or three); `worked`: one working, large; `stages`: a working in pictures with what is said; `workings`: several,
 * small; `bars`: a bar model, to be completed or complete; `together`: blocks that stay on one page; `halves`: halves of a page, to be cut
 * apart.
 */
export type Block =
  | { readonly kind: 'heading' | 'text'; readonly text: string }
  | { readonly kind: 'fields'; readonly names: readonly string[] }
  | { readonly kind: 'list' | 'ticks'; readonly items: readonly string[] }
  | { readonly kind: 'rooms'; readonly rooms: readonly Room[]; readonly across?: 2 | 3 }
  | { readonly kind: 'worked'; readonly working: Working }
  | { readonly kind: 'stages'; readonly stages: readonly Stage[] }
  | { readonly kind: 'workings'; readonly workings: readonly Working[] }
  | { readonly kind: 'grid'; readonly rows: readonly (readonly GridCell[])[] }
  | { readonly kind: 'triangles'; readonly triangles: readonly TriangleFigure[] }
  | { readonly kind: 'bars'; readonly bars: readonly Bar[]; readonly shown: Shown }
  | { readonly kind: 'together'; readonly blocks: readonly Block[] }
  | { readonly kind: 'halves'; readonly halves: readonly (readonly Block[])[] }

/**
 * One sheet of a hand-out; a long one runs on to further pages. For the `reader` pupil it is set larger than for an adult. Without a title
 * ('') its halves have headings of their own. `set` is its set number where that is not the hand-out's.
 */
export interface Sheet {
  readonly title: string
  readonly set?: string
  readonly reader: 'pupil' | 'adult'
  readonly blocks: readonly Block[]
}

/** How hand-outs are made: in the school's notation, with the set number ('' for none). */
export interface Making {
  readonly notation: Notation
  readonly set: string
}

/** A hand-out: sheets in the order in which they are printed, and the set number that stands small on each ('' for none). */
export interface Handout {
  readonly title: string
  readonly set: string
  readonly sheets: readonly Sheet[]
}
