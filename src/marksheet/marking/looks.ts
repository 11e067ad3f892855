import type { Status } from '../../mastery/standing'

/**
 * How a marked cell looks. Colours are six hexadecimal digits. Blue and orange differ for readers with any of the common kinds of
 * colour blindness and in grey print; weight, slant and lines tell the same without any colour. Where two rules hold for a cell, Excel
 * shows the first one's look and whatever else the second one sets: so every look sets weight, slant and line, also where it
 * has none.
 */
export interface Look {
  readonly fill: string
  readonly ink: string
  readonly bold: boolean
  readonly italic: boolean
  readonly underline: boolean
  readonly border: 'dashed' | null
  /** A number format that puts a sign before a text, or null where the cell's own stays. */
  readonly numberFormat: string | null
}

export type LookName = 'right' | 'wrong' | 'unreadable' | 'absent' | 'flag'

/** The looks of answers, and of the name of a pupil who needs support. */
export const LOOKS: Readonly<Record<LookName, Look>> = {
  right: {
    fill: 'DCEAF7',
    ink: '143D5E',
    bold: false,
    italic: false,
    underline: false,
    border: null,
    numberFormat: null,
  },
  wrong: {
    fill: 'FBDFC2',
    ink: '6B3300',
    bold: true,
    italic: false,
    underline: true,
    border: null,
    numberFormat: null,
  },
  unreadable: {
    fill: 'E9E1F5',
    ink: '46307A',
    bold: false,
    italic: true,
    underline: false,
    border: 'dashed',
    numberFormat: null,
  },
  absent: {
    fill: 'EDEDED',
    ink: '595959',
    bold: false,
    italic: true,
    underline: false,
    border: null,
    numberFormat: null,
  },
  flag: {
    fill: '0B5563',
    ink: 'FFFFFF',
    bold: true,
    italic: false,
    underline: false,
    border: null,
    numberFormat: 'General;-General;General;"⚑ "@',
  },
}

/** The fill behind a status in the Mastery sheet; its sign and word stand in the cell. */
export const STATUS_FILLS: Readonly<Record<Status, string>> = {
  secure: LOOKS.right.fill,
  'nearly secure': 'F4F1E6',
  'needs support': LOOKS.wrong.fill,
  'not enough seen': LOOKS.absent.fill,
}
