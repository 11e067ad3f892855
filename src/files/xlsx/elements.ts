import { tagsOf, type Tag } from './xml'

/** A child of a part's root: its tag, where what it holds ends, and where it ends itself. */
export interface Child {
  readonly name: string
  readonly tag: Tag
  readonly contentEnd: number
  readonly end: number
}

/** The root of a part with the places of its children. `close` is where a last child would go. */
export interface Root {
  readonly tag: Tag
  readonly close: number
  readonly children: readonly Child[]
}

/** Finds the root and its children. Throws SyntaxError. */
export function rootOf(xml: string): Root {
  const children: Child[] = []
  let root: Tag | undefined
  let close = 0
  let open: Tag | undefined
  for (const tag of tagsOf(xml)) {
    if (tag.depth === 0) {
      if (tag.kind === 'close') close = tag.start
      else root = tag
      if (tag.kind === 'empty') throw new SyntaxError(`Its <${tag.name}/> is empty.`)
    } else if (tag.depth === 1) {
      if (tag.kind === 'open') open = tag
      if (tag.kind === 'empty') children.push({ name: tag.name, tag, contentEnd: tag.end, end: tag.end })
      if (tag.kind === 'close' && open)
        children.push({ name: tag.name, tag: open, contentEnd: tag.start, end: tag.end })
    }
  }
  if (!root) throw new SyntaxError('It is empty.')
  return { tag: root, close, children }
}

/** Where a new child goes: before the first child with one of the names that the format's schema puts behind it, or last. */
export function placeBefore({ children, close }: Root, behind: readonly string[]): number {
  return children.find(({ name }) => behind.includes(name))?.tag.start ?? close
}

/** The names that come after one in an order. */
export function behind(order: readonly string[], name: string): readonly string[] {
  return order.slice(order.indexOf(name) + 1)
}

/** Signs that XML cannot hold, and what would be read as one of them escaped (ECMA-376, ST_Xstring). */
const NOT_PLAIN = /[\u{0}-\u{8}\u{b}-\u{1f}\u{d800}-\u{dfff}\u{fffe}\u{ffff}]|_(?=x[\da-f]{4}_)/giu
const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

/** A text as the format writes it between tags or quotes. */
export function written(text: string): string {
  return text
    .replace(NOT_PLAIN, (sign) => `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`)
    .replace(/[&<>"]/g, (sign) => ENTITIES[sign] ?? sign)
}

/** Writes an element from its attributes and content, which is XML; empty where there is none. `name` with its prefix. */
export function element(
  name: string,
  attributes: Readonly<Record<string, string | number>> = {},
  content = '',
): string {
  const all = Object.entries(attributes).map(([key, value]) => ` ${key}="${written(String(value))}"`)
  const start = `<${name}${all.join('')}`
  return content === '' ? `${start}/>` : `${start}>${content}</${name}>`
}
