import { DOMParser, onWarningStopParsing, type Element } from '@xmldom/xmldom'
import { XSI } from './schema'

/** An XML element as plain data: `type` is its xsi:type, `text` what it holds besides elements. */
export interface XmlElement {
  readonly name: string
  readonly namespace: string | null
  readonly type: string | null
  readonly attributes: Readonly<Record<string, string>>
  readonly text: string
  readonly children: readonly XmlElement[]
}

/** Reads well-formed XML; throws Error with the parser's words for anything else. */
export function parseXml(text: string): XmlElement {
  const root = new DOMParser({ onError: onWarningStopParsing }).parseFromString(
    text,
    'text/xml',
  ).documentElement
  if (!root) throw new Error('the file holds no element')
  return plain(root)
}

function plain(element: Element): XmlElement {
  const nodes = Array.from(element.childNodes)
  return {
    name: element.localName ?? element.nodeName,
    namespace: element.namespaceURI,
    type: element.getAttributeNS(XSI, 'type'),
    attributes: Object.fromEntries(Array.from(element.attributes, ({ name, value }) => [name, value])),
    text: nodes
      .filter((node) => node.nodeType === node.TEXT_NODE)
      .map((node) => node.nodeValue)
      .join('')
      .trim(),
    children: nodes.filter((node): node is Element => node.nodeType === node.ELEMENT_NODE).map(plain),
  }
}

/** The element and everything within it, in document order. */
export function everyElement(element: XmlElement): XmlElement[] {
  return [element, ...element.children.flatMap(everyElement)]
}

/** The elements that a path of names leads to: ['Hosts', 'Host'] the hosts of the base manifest. */
export function elementsAt(element: XmlElement, path: readonly string[]): XmlElement[] {
  return path.reduce(
    (found, name) => found.flatMap(({ children }) => children.filter((child) => child.name === name)),
    [element],
  )
}
