/** What ends a marked copy, as the comment of the archive; a program that saves the workbook anew leaves it out. */
export const COPY_MARK = 'Columnwise: marked copy'

/** Whether a file is a marked copy as it was made, not saved by another program since. */
export function isMarkedCopy(bytes: Uint8Array): boolean {
  return new TextDecoder().decode(bytes.subarray(-COPY_MARK.length)) === COPY_MARK
}
