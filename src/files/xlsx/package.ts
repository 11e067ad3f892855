import JSZip from 'jszip'
import { refuseNoArchive } from './kinds'
import { Unreadable } from './unreadable'

/** As many bytes as may come out of one file, all parts that are read taken together. */
const MOST_BYTES = 2 ** 27
/** As many parts as a file may have. */
const MOST_PARTS = 20_000

/**
 * The parts of an .xlsx file by their names ("xl/workbook.xml"), upper and lower case alike (ECMA-376, part 2). A part is unpacked when
 * it is asked for, and its bytes are counted while they come out, whatever the file says of its size. Works in a browser too.
 */
export class Package {
  private left = MOST_BYTES
  private readonly names = new Map<string, string>()
  private readonly texts = new Map<string, string>()

  private constructor(private readonly zip: JSZip) {
    for (const [name, { dir }] of Object.entries(zip.files)) if (!dir) this.names.set(key(name), name)
    if (this.names.size > MOST_PARTS) throw new Unreadable(`it has more than ${MOST_PARTS} parts.`)
  }

  /** Opens a file from its bytes. Throws Unreadable where it is no archive of parts. */
  static async open(bytes: Uint8Array): Promise<Package> {
    refuseNoArchive(bytes)
    const zip = await JSZip.loadAsync(bytes).catch((cause: unknown) => {
      throw new Unreadable('it is damaged, was not copied whole or is protected by a password.', { cause })
    })
    return new Package(zip)
  }

  /** The names of all parts, in small letters. */
  parts(): string[] {
    return [...this.names.keys()]
  }

  has(part: string): boolean {
    return this.names.has(key(part))
  }

  /** What a function makes of an XML part. Throws Unreadable, with the part's name, where there is none or it is not well-formed. */
  async parse<T>(part: string, parse: (xml: string) => T): Promise<T> {
    const text = await this.text(part)
    try {
      return parse(text)
    } catch (error) {
      if (!(error instanceof SyntaxError)) throw error
      throw new Unreadable(`its part ${part} is no XML that can be read. ${error.message}`, { cause: error })
    }
  }

  /** The text of an XML part. Throws Unreadable, with the part's name, where there is none or it cannot be unpacked. */
  async text(part: string): Promise<string> {
    const name = this.names.get(key(part))
    if (name === undefined) throw new Unreadable(`its part ${part} is missing.`)
    const text = this.texts.get(name) ?? decoded(await this.unpacked(name), name)
    this.texts.set(name, text)
    return text
  }

  /** Puts an XML part in the place of the one with this name, or adds it. */
  put(part: string, text: string): void {
    const name = this.names.get(key(part)) ?? part
    this.names.set(key(part), name)
    this.texts.set(name, text)
    // Parts may be in UTF-16; all that is written is in UTF-8.
    const utf8 = text.replace(/^(<\?xml[^>]*?\sencoding\s*=\s*)(?:"[^"]*"|'[^']*')/, '$1"UTF-8"')
    this.zip.file(
      name,
      utf8.startsWith('<?xml') ? utf8 : `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n${utf8}`,
    )
  }

  /** The bytes of a file with what was put into it; all other parts keep their bytes, packed as they were. */
  save(comment: string): Promise<Uint8Array> {
    return this.zip.generateAsync({ type: 'uint8array', compression: 'DEFLATE', comment })
  }

  private unpacked(name: string): Promise<Uint8Array> {
    return new Promise((resolve, reject) => {
      const chunks: Uint8Array[] = []
      const stream = streamOf(this.zip, name)
      stream
        .on('data', (chunk) => {
          this.left -= chunk.length
          if (this.left >= 0) chunks.push(chunk)
          else {
            stream.pause()
            reject(new Unreadable(`unpacked, it holds more than ${MOST_BYTES / 2 ** 20} MB (part ${name}).`))
          }
        })
        .on('error', (cause) => {
          reject(new Unreadable(`its part ${name} is damaged.`, { cause }))
        })
        .on('end', () => {
          resolve(joined(chunks))
        })
        .resume()
    })
  }
}

/** A part's name as it is compared; some programs write it with backslashes, or from the root. */
function key(name: string): string {
  return name.replaceAll('\\', '/').replace(/^\//, '').toLowerCase()
}

/** The text of an XML part, which may be in UTF-8 or UTF-16 (ECMA-376, part 2). */
function decoded(bytes: Uint8Array, part: string): string {
  const [first, second] = bytes
  const encoding =
    first === 0xff || second === 0 ? 'utf-16le' : first === 0xfe || first === 0 ? 'utf-16be' : 'utf-8'
  try {
    const text = new TextDecoder(encoding, { fatal: true }).decode(bytes)
    const [, declared = encoding] = /^<\?xml[^>]*?\sencoding\s*=\s*["']([^"']*)/.exec(text) ?? []
    if (/^(?:utf-?(?:8|16)|us-ascii)/i.test(declared)) return text
  } catch {
    // What cannot be decoded is refused as well.
  }
  throw new Unreadable(`its part ${part} is not text in UTF-8 or UTF-16.`)
}

/** A stream of what a part unpacks to, as JSZip documents it; its declared types leave it out. */
interface Stream {
  on(event: 'data', listener: (chunk: Uint8Array) => void): Stream
  on(event: 'error', listener: (error: Error) => void): Stream
  on(event: 'end', listener: () => void): Stream
  pause(): void
  resume(): void
}

function streamOf(zip: JSZip, name: string): Stream {
  return (zip.file(name) as unknown as { internalStream(type: 'uint8array'): Stream }).internalStream(
    'uint8array',
  )
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const chunk of chunks) {
    all.set(chunk, at)
    at += chunk.length
  }
  return all
}
