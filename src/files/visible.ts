/**
 * Signs that a terminal obeys instead of showing, or that turn the order of what follows: C0 and C1 controls, the line and paragraph
 * separators, and the marks that direct text (Unicode Standard Annex #9, from memory).
 */
const HIDDEN =
  /[\u{0}-\u{1f}\u{7f}-\u{9f}\u{61c}\u{200b}\u{200e}\u{200f}\u{2028}-\u{202e}\u{2060}-\u{206f}\u{feff}\u{fff9}-\u{fffb}\u{e0000}-\u{e007f}]/gu

/** A text for a terminal's line: signs that would steer the terminal, or hide or turn text, as escapes that show ("\u{1b}"). */
export function visible(text: string): string {
  return text.replace(HIDDEN, (sign) => `\\u{${(sign.codePointAt(0) ?? 0).toString(16)}}`)
}

/** JSON text with the same signs escaped as JSON has it: it means the same. */
export function visibleJson(json: string): string {
  return json.replace(HIDDEN, (sign) =>
    Array.from(
      { length: sign.length },
      (_, unit) => `\\u${sign.charCodeAt(unit).toString(16).padStart(4, '0')}`,
    ).join(''),
  )
}
