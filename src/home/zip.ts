/** A file in an archive, its name with slashes: "xl/workbook.xml". */
export interface ZipFile {
  readonly name: string
  readonly text: string
}

/** 1 January 1980, the first day that an archive can name: what was packed says nothing of when. */
const DAY = 0x21
const VERSION = 20
/** Names are in UTF-8. */
const UTF8 = 0x0800

/**
 * An archive of text files, each stored as it is (the ZIP file format as Office Open XML takes it: local headers, central directory, its end
 * record; field order from PKWARE's APPNOTE.TXT, from memory). A library would pack them smaller, but the pane may not hold one that turns
 * text into a program, as the usual one does. It ends with the comment.
 */
export function zipped(files: readonly ZipFile[], comment: string): Uint8Array {
  const utf8 = new TextEncoder()
  const entries: Uint8Array[] = []
  const directory: Uint8Array[] = []
  let offset = 0
  for (const file of files) {
    const [name, data] = [utf8.encode(file.name), utf8.encode(file.text)]
    const common = [VERSION, UTF8, 0, 0, DAY]
    const sizes = [crc32(data), data.length, data.length]
    const local = joined([
      numbers(4, [0x04034b50]),
      numbers(2, common),
      numbers(4, sizes),
      numbers(2, [name.length, 0]),
      name,
      data,
    ])
    directory.push(
      joined([
        numbers(4, [0x02014b50]),
        numbers(2, [VERSION, ...common]),
        numbers(4, sizes),
        numbers(2, [name.length, 0, 0, 0, 0]),
        numbers(4, [0, offset]),
        name,
      ]),
    )
    entries.push(local)
    offset += local.length
  }
  const [listed, ending] = [joined(directory), utf8.encode(comment)]
  const end = joined([
    numbers(4, [0x06054b50]),
    numbers(2, [0, 0, files.length, files.length]),
    numbers(4, [listed.length, offset]),
    numbers(2, [ending.length]),
    ending,
  ])
  return joined([...entries, listed, end])
}

/** Whole numbers of so many bytes each, the lowest byte first. */
function numbers(bytes: 2 | 4, values: readonly number[]): Uint8Array {
  return Uint8Array.from(
    values.flatMap((value) => Array.from({ length: bytes }, (_, at) => (value >>> (8 * at)) & 0xff)),
  )
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}

/** The remainder of each byte by the polynomial of CRC-32 (ISO-HDLC). */
const REMAINDERS = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1
  return rest
})

/** CRC-32, as archives have it. */
export function crc32(bytes: Uint8Array): number {
  return ~bytes.reduce((crc, byte) => (crc >>> 8) ^ (REMAINDERS[(crc ^ byte) & 0xff] ?? 0), 0xffffffff) >>> 0
}
