/** Something that cannot be done, as a teacher reads it: a sentence that says what is the matter, and what to do next. */
export class Problem extends Error {
  constructor(
    readonly sentence: string,
    readonly next: string,
    options?: ErrorOptions,
  ) {
    super(`${sentence} ${next}`.trim(), options)
    this.name = 'Problem'
  }
}

/** The teacher stopped the work. */
export class Stopped extends Problem {
  constructor() {
    super('Stopped, and nothing was changed.', '')
    this.name = 'Stopped'
  }
}

/** The problem of a sheet that takes neither cells nor pictures. */
export function protectedSheet(name: string): Problem {
  return new Problem(
    `The sheet ${name} is protected, so nothing can be put on it.`,
    'Choose Review, then Unprotect Sheet, and try again; protect it again afterwards.',
  )
}

/** The problem of a sheet that is to be added under a name that another sheet got in the meantime. */
export function nameTaken(name: string): Problem {
  return new Problem(
    `A sheet called ${name} has been added in the meantime.`,
    'Try again; another name is found then.',
  )
}

type Words = readonly [sentence: string, next: string]

const AGAIN = 'Try again in a moment.'
const RELOAD = 'Try again. If it happens once more, close the pane and open it again from the Home tab.'
const PROTECTED: Words = [
  'This sheet or workbook is protected or open for reading only, so Excel does not let Columnwise write to it.',
  'Choose Review, then Unprotect Sheet (and Protect Workbook, to switch that off), or open the workbook for editing; then try again.',
]
const TOO_LARGE: Words = [
  'This is more than Excel takes in one go.',
  'Try with fewer pupils or questions, or move part of the class to another sheet.',
]
const GONE: Words = [
  'The sheet or cells were moved, renamed or deleted in the meantime.',
  'Open the sheet again and press Look again.',
]
const OLD_EXCEL: Words = [
  'This version of Excel cannot do that.',
  'Update Excel, or open the workbook in Excel on the web.',
]
const NOT_A_SHEET: Words = [
  'This kind of sheet has no cells to work with.',
  'Go to the sheet that holds the marksheet.',
]
const NOT_TAKEN: Words = ['Excel did not take what Columnwise asked for.', RELOAD]
const BUSY: Words = ['Excel is busy with something else.', AGAIN]
const LINKED: Words = [
  'Excel asks about links or queries of this workbook first.',
  'Answer Excel’s question, then try again.',
]

/**
 * What each error code of Excel's client library means to a teacher: the members of Excel.ErrorCodes, and the codes that Microsoft's page
 * on error handling lists besides (from memory).
 */
export const WORDS: Readonly<Record<string, Words>> = {
  AccessDenied: PROTECTED,
  ActivityLimitReached: BUSY,
  ApiNotAvailable: OLD_EXCEL,
  ApiNotFound: OLD_EXCEL,
  BadPassword: PROTECTED,
  Conflict: ['Somebody else changed the same cells just now.', AGAIN],
  DirtySupportingFormula: ['Excel has not finished calculating this sheet.', AGAIN],
  EmptyChartSeries: ['There is nothing yet that a chart could show.', 'Mark some answers first.'],
  FilteredRangeConflict: [
    'A filter on this sheet is in the way.',
    'Choose Data, then Clear, to show all rows; then try again.',
  ],
  FormulaLengthExceedsLimit: TOO_LARGE,
  GeneralException: ['Excel could not finish what it was asked for.', RELOAD],
  InactiveWorkbook: [
    'Another workbook is in front.',
    'Click into the workbook with the marksheet and try again.',
  ],
  InsertDeleteConflict: ['Something on the sheet is in the way of new cells.', RELOAD],
  InvalidArgument: NOT_TAKEN,
  InvalidBinding: GONE,
  InvalidOperation: NOT_TAKEN,
  InvalidOperationInCellEditMode: [
    'Excel is waiting for a cell that is still being typed in.',
    'Press Enter or Esc in the sheet, then try again.',
  ],
  InvalidReference: GONE,
  InvalidRequest: NOT_TAKEN,
  InvalidSelection: [
    'The selection is not one block of cells.',
    'Select one block, such as B5:N33, and try again.',
  ],
  ItemAlreadyExists: ['A sheet of that name is there already.', 'Rename it, then try again.'],
  ItemNotFound: GONE,
  MemoryLimitReached: TOO_LARGE,
  MergedRangeConflict: [
    'Merged cells are in the way.',
    'Select them, choose Home, then Unmerge Cells; then try again.',
  ],
  NonBlankCellOffSheet: [
    'The sheet is filled to its last row or column.',
    'Free some cells at its edge, then try again.',
  ],
  NotImplemented: OLD_EXCEL,
  OpenWorkbookLinksBlocked: LINKED,
  OperationCellsExceedLimit: TOO_LARGE,
  PivotTableRangeConflict: ['A pivot table is in the way.', 'Move it to another sheet, then try again.'],
  PowerQueryRefreshResourceChallenge: LINKED,
  PropertyNotLoaded: NOT_TAKEN,
  RangeExceedsLimit: TOO_LARGE,
  RangeImageExceedsLimit: TOO_LARGE,
  RefreshWorkbookLinksBlocked: LINKED,
  RequestAborted: BUSY,
  RequestPayloadSizeLimitExceeded: TOO_LARGE,
  ResponsePayloadSizeLimitExceeded: TOO_LARGE,
  ServiceNotAvailable: BUSY,
  Timeout: BUSY,
  Unauthenticated: ['Excel is no longer signed in.', 'Sign in to Excel again, then try again.'],
  UnsupportedFeature: OLD_EXCEL,
  UnsupportedFillType: NOT_TAKEN,
  UnsupportedOperation: OLD_EXCEL,
  UnsupportedSheet: NOT_A_SHEET,
}

const UNKNOWN: Words = ['Something went wrong that Columnwise did not expect.', RELOAD]

/** The client library's code of an error; '' where it has none. */
export function codeOf(error: unknown): string {
  return typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : ''
}

/** Any error as a problem with a sentence and a next step; the error itself stays as its cause. */
export function problemOf(error: unknown): Problem {
  if (error instanceof Problem) return error
  if (error instanceof DOMException && error.name === 'AbortError') return new Stopped()
  const [sentence, next] = WORDS[codeOf(error)] ?? UNKNOWN
  return new Problem(sentence, next, { cause: error })
}
