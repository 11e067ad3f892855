import { DOMParser, XMLSerializer, type Document, type Element } from '@xmldom/xmldom'
import JSZip from 'jszip'

/** The XML namespaces of a workbook's parts (ECMA-376, Office Open XML). */
export const NS = {
  main: 'http://schemas.openxmlformats.org/spreadsheetml/2006/main',
  relations: 'http://schemas.openxmlformats.org/officeDocument/2006/relationships',
  packageRelations: 'http://schemas.openxmlformats.org/package/2006/relationships',
  types: 'http://schemas.openxmlformats.org/package/2006/content-types',
} as const

/**
 * The parts of an .xlsx file. Only the parts that are asked for as XML are written anew when the file is saved; every other part
 * (charts, pictures, other sheets, macros' data) keeps its bytes.
 */
export class Parts {
  private readonly documents = new Map<string, Document>()

  private constructor(private readonly zip: JSZip) {}

  static async open(bytes: Uint8Array): Promise<Parts> {
    return new Parts(await JSZip.loadAsync(bytes))
  }

  /** The names of all parts: "xl/workbook.xml", … */
  names(): string[] {
    return Object.keys(this.zip.files).filter((name) => !name.endsWith('/'))
  }

  /** A part as XML, to read or to change. Throws Error where there is none. */
  async xml(name: string): Promise<Document> {
    const known = this.documents.get(name)
    if (known) return known
    const file = this.zip.file(name)
    if (!file) throw new Error(`The workbook has no part ${name}.`)
    const document = new DOMParser().parseFromString(await file.async('string'), 'text/xml')
    this.documents.set(name, document)
    return document
  }

  /** Adds a part from its XML text. */
  add(name: string, xml: string): void {
    this.documents.set(name, new DOMParser().parseFromString(xml, 'text/xml'))
  }

  /** The file's bytes, with the changes. */
  async save(): Promise<Uint8Array> {
    for (const [name, document] of this.documents) {
      const text = new XMLSerializer().serializeToString(document)
      this.zip.file(
        name,
        text.startsWith('<?xml') ? text : `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n${text}`,
      )
    }
    return this.zip.generateAsync({ type: 'uint8array', compression: 'DEFLATE', comment: COPY_MARK })
  }
}

/** What ends a marked copy, as the comment of the archive; a program that saves the workbook anew leaves it out. */
const COPY_MARK = 'Columnwise: marked copy'

/** Whether a file is a marked copy as it was made, not saved by another program since. */
export function isMarkedCopy(bytes: Uint8Array): boolean {
  return new TextDecoder().decode(bytes.subarray(-COPY_MARK.length)) === COPY_MARK
}

/** The root element of a document; throws Error where it is empty. */
export function rootOf(document: Document): Element {
  if (!document.documentElement) throw new Error('A part of the workbook is empty.')
  return document.documentElement
}

/** The element children of an element with a name, whatever their prefix. */
export function children(parent: Element, name?: string): Element[] {
  const found: Element[] = []
  for (let node = parent.firstChild; node; node = node.nextSibling) {
    if (node.nodeType === 1 && (name === undefined || (node as Element).localName === name))
      found.push(node as Element)
  }
  return found
}

/** Makes an element of the main namespace, with the prefix that the part uses, from attributes and children. */
export function make(
  parent: Element,
  name: string,
  attributes: Readonly<Record<string, string | number>> = {},
  content: readonly (Element | string)[] = [],
): Element {
  const document = parent.ownerDocument
  if (!document) throw new Error('An element outside a document.')
  const element = document.createElementNS(NS.main, parent.prefix ? `${parent.prefix}:${name}` : name)
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value))
  for (const item of content)
    element.appendChild(typeof item === 'string' ? document.createTextNode(escaped(item)) : item)
  return element
}

/** Signs that XML cannot hold, and what would be read as one of them escaped. */
const NOT_PLAIN = /[\u{0}-\u{8}\u{b}-\u{1f}\u{d800}-\u{dfff}\u{fffe}\u{ffff}]|_(?=x[\da-f]{4}_)/giu

/** A text as the format writes it: "_x0007_" stands for a sign that XML cannot hold (ECMA-376, ST_Xstring). */
function escaped(text: string): string {
  return text.replace(
    NOT_PLAIN,
    (sign) => `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`,
  )
}

/**
 * The child with this name, made where there is none, before the first of the children that the format's schema puts behind it.
 */
export function ensureChild(parent: Element, name: string, behind: readonly string[]): Element {
  const [present] = children(parent, name)
  if (present) return present
  const made = make(parent, name)
  insertBeforeAny(parent, made, behind)
  return made
}

/** Puts a new child before the first child with one of the names, or at the end. */
export function insertBeforeAny(parent: Element, child: Element, names: readonly string[]): void {
  const next = children(parent).find(({ localName }) => localName !== null && names.includes(localName))
  parent.insertBefore(child, next ?? null)
}
