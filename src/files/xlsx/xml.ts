/**
 * A tag of an XML text: "<row r="5">" opens, "</row>" closes, "<c r="B5"/>" is empty. `name` is without its prefix; the text from `start`
 * to before `end` is the tag itself.
 */
export interface Tag {
  readonly kind: 'open' | 'close' | 'empty'
  readonly name: string
  readonly prefix: string
  /** How many elements are open around it. */
  readonly depth: number
  readonly start: number
  readonly end: number
}

/** Deeper than any part of a workbook is nested. */
const DEEPEST = 200

/**
 * The tags of an XML text in their order; comments, instructions and character data are passed over. A scanner rather than a tree, since
 * a sheet's tree takes some thirty times its text, and since places in the text are what a marked copy is written by. Throws
 * SyntaxError where the text is not well-formed, or has a document type, which Office Open XML does not allow (ECMA-376, part 2).
 */
export function* tagsOf(xml: string): Generator<Tag, void, undefined> {
  const open: string[] = []
  let isEnded = false
  for (let at = nextTag(xml, 0); at >= 0;) {
    const second = xml.charCodeAt(at + 1)
    if (second === QUESTION) at = nextTag(xml, after(xml, '?>', at + 2))
    else if (second === EXCLAMATION) at = nextTag(xml, afterDeclaration(xml, at))
    else {
      const tag = tagAt(xml, at, open.length)
      const full = tag.prefix + tag.name
      if (tag.kind === 'close') {
        if (open.pop() !== full) throw new SyntaxError(`</${full}> closes nothing.`)
      } else {
        if (isEnded) throw new SyntaxError('There is more than one element at the top.')
        if (tag.kind === 'open' && open.push(full) > DEEPEST)
          throw new SyntaxError('It is nested too deeply.')
      }
      isEnded = open.length === 0
      yield tag
      at = nextTag(xml, tag.end)
    }
  }
  if (!isEnded)
    throw new SyntaxError(open.length === 0 ? 'It is empty.' : `<${open.at(-1) ?? ''}> is not closed.`)
}

const [EXCLAMATION, QUOTE, APOSTROPHE, SLASH, GREATER, QUESTION] = [0x21, 0x22, 0x27, 0x2f, 0x3e, 0x3f]

const nextTag = (xml: string, from: number) => xml.indexOf('<', from)

/** The place behind the next `end`. */
function after(xml: string, end: string, from: number): number {
  const at = xml.indexOf(end, from)
  if (at < 0) throw new SyntaxError(`It ends before a ${end}.`)
  return at + end.length
}

function afterDeclaration(xml: string, at: number): number {
  if (xml.startsWith('<!--', at)) return after(xml, '-->', at + 4)
  if (xml.startsWith('<![CDATA[', at)) return after(xml, ']]>', at + 9)
  throw new SyntaxError('It has a document type.')
}

const NAME = /\/?([^\s/>:=<]+:)?([^\s/>:=<]+)/y

function tagAt(xml: string, start: number, open: number): Tag {
  const end = tagEnd(xml, start)
  NAME.lastIndex = start + 1
  const [, prefix = '', name = ''] = NAME.exec(xml) ?? []
  if (name === '' || NAME.lastIndex >= end) throw new SyntaxError('A tag has no name.')
  const isClose = xml.charCodeAt(start + 1) === SLASH
  const isEmpty = xml.charCodeAt(end - 2) === SLASH
  const kind = isClose ? 'close' : isEmpty ? 'empty' : 'open'
  return { kind, name, prefix, depth: isClose ? open - 1 : open, start, end }
}

/** The place behind the > of the tag; one between quotes is part of an attribute. */
function tagEnd(xml: string, start: number): number {
  const last = Math.min(xml.length, start + LONGEST_TAG)
  for (let at = start + 1; at < last; at++) {
    const code = xml.charCodeAt(at)
    if (code === GREATER) return at + 1
    if (code === QUOTE || code === APOSTROPHE) at = after(xml, xml.charAt(at), at + 1) - 1
  }
  throw new SyntaxError('It ends within a tag, or has one that is longer than any.')
}

const ATTRIBUTE = /\s+([^\s/>=:"'<]+:)?([^\s/>=:"'<]+)\s*=\s*(?:"([^"<]*)"|'([^'<]*)')/y

/** The attributes of a tag, by their names without prefix; where two would be one, the one without prefix counts. */
export function attributesOf(xml: string, { start, end, prefix, name }: Tag): Map<string, string> {
  const found = new Map<string, string>()
  ATTRIBUTE.lastIndex = start + 1 + prefix.length + name.length
  for (let match; (match = ATTRIBUTE.exec(xml)) && ATTRIBUTE.lastIndex < end;) {
    const [, own, key = '', double, single = ''] = match
    if (own === undefined || !found.has(key)) found.set(key, plainText(double ?? single))
  }
  return found
}

/** A cell holds 32,767 signs (Excel specifications and limits, Microsoft), and XML may write each with ten. */
const LONGEST_TEXT = 400_000
const LONGEST_TAG = 1_000_000
const MARKUP = /<!--.*?-->|<\?.*?\?>|<!\[CDATA\[(.*?)\]\]>|&([^;]*);|\r\n?/gs
const ENTITIES: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" }

/** The text that a piece of XML without elements stands for. Throws SyntaxError for an entity that XML does not know. */
export function plainText(xml: string): string {
  if (xml.length > LONGEST_TEXT) throw new SyntaxError('It holds a text that is longer than any cell’s.')
  if (!/[&<\r]/.test(xml)) return xml
  return xml.replace(MARKUP, (all, data: string | undefined, entity: string | undefined) => {
    if (entity !== undefined) return characterOf(entity)
    return all.startsWith('\r') ? '\n' : (data ?? '').replace(/\r\n?/g, '\n')
  })
}

function characterOf(entity: string): string {
  const [, hex, decimal] = /^#(?:x([\da-f]+)|(\d+))$/i.exec(entity) ?? []
  const code = hex === undefined ? Number(decimal) : parseInt(hex, 16)
  const character = code <= 0x10ffff ? String.fromCodePoint(code) : ENTITIES[entity]
  if (character === undefined) throw new SyntaxError(`It holds &${entity};, which is no character.`)
  return character
}

/** A text as the format keeps it: "_x0007_" stands for a sign that XML cannot hold (ECMA-376, ST_Xstring). */
export function unescaped(text: string): string {
  return text.replace(/_x([\dA-Fa-f]{4})_/g, (_, hex: string) => String.fromCharCode(parseInt(hex, 16)))
}
