/** A text with changes by place: whatever they do not touch stays as it was, sign by sign. */
export class Edits {
  private readonly all: { readonly start: number; readonly end: number; readonly by: string }[] = []

  constructor(private readonly text: string) {}

  /** Puts something in the place of what stands from `start` to before `end`; pieces may not overlap. */
  replace(start: number, end: number, by: string): void {
    this.all.push({ start, end, by })
  }

  /** Puts something before the sign at `at`, behind what was inserted there before. */
  insert(at: number, by: string): void {
    this.replace(at, at, by)
  }

  /** The text with all changes. */
  result(): string {
    const pieces: string[] = []
    let at = 0
    // Of two changes at one place, the one that was asked for first comes first.
    for (const { start, end, by } of this.all.sort((a, b) => a.start - b.start || a.end - b.end)) {
      if (start < at) throw new RangeError('Two changes of a part overlap.')
      pieces.push(this.text.slice(at, start), by)
      at = end
    }
    pieces.push(this.text.slice(at))
    return pieces.join('')
  }
}
