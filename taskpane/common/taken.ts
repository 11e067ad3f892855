const MOST_LISTED = 6

/** Which cells are not empty, and the question whether they may be written over. */
export function takenSentence({
  taken,
  sheet,
}: {
  readonly taken: readonly string[]
  readonly sheet: { readonly name: string }
}): string {
  const one = taken.length === 1
  const more = taken.length - MOST_LISTED
  const listed = taken.slice(0, MOST_LISTED).join(', ') + (more > 0 ? ` and ${more} more` : '')
  const are = one ? `Cell ${listed} on ${sheet.name} is` : `Cells ${listed} on ${sheet.name} are`
  return `${are} not empty. Write over ${one ? 'it' : 'them'}?`
}
