import type { Document, Element } from '@xmldom/xmldom'
import type { Look } from '../marksheet/marking/looks'
import { children, ensureChild, make, rootOf } from './parts'

/** How a cell that the add-in writes looks. `fill` is six hexadecimal digits. */
export interface CellStyle {
  readonly bold: boolean
  readonly italic: boolean
  readonly fill: string | null
  readonly wrap: boolean
  /** Whether the text runs up the cell. */
  readonly upright: boolean
}

const ORDER = [
  'numFmts',
  'fonts',
  'fills',
  'borders',
  'cellStyleXfs',
  'cellXfs',
  'cellStyles',
  'dxfs',
  'tableStyles',
  'colors',
  'extLst',
]

/** Adds styles to a workbook's style part; asking twice for the same one gives the same number. */
export class Styles {
  private readonly root: Element
  private readonly known = new Map<string, number>()

  constructor(document: Document) {
    this.root = rootOf(document)
  }

  /** The number of the differential style for a look. */
  differential(look: Look): number {
    return this.once(`look ${JSON.stringify(look)}`, () => {
      const list = this.list('dxfs')
      const font = make(list, 'font', {}, [
        make(list, 'b', { val: Number(look.bold) }),
        make(list, 'i', { val: Number(look.italic) }),
        make(list, 'u', { val: look.underline ? 'single' : 'none' }),
        make(list, 'color', { rgb: `FF${look.ink}` }),
      ])
      const format =
        look.numberFormat === null
          ? []
          : [make(list, 'numFmt', { numFmtId: this.freeFormat(), formatCode: look.numberFormat })]
      const fill = make(list, 'fill', {}, [this.pattern(list, look.fill)])
      const border = look.border === null ? [] : [this.border(list, look.border, look.ink)]
      return this.append(list, make(list, 'dxf', {}, [font, ...format, fill, ...border]))
    })
  }

  /** The number of the cell style, built on the workbook's standard font. */
  cell(style: CellStyle): number {
    const { bold, italic, fill, wrap, upright } = style
    return this.once(`cell ${JSON.stringify(style)}`, () => {
      const list = this.list('cellXfs')
      const attributes = {
        numFmtId: 0,
        fontId: this.font(bold, italic),
        fillId: this.fill(fill),
        borderId: 0,
        xfId: 0,
      }
      const alignment = make(list, 'alignment', {
        vertical: 'top',
        ...(wrap ? { wrapText: 1 } : {}),
        ...(upright ? { textRotation: 90 } : {}),
      })
      return this.append(
        list,
        make(list, 'xf', { ...attributes, applyFont: 1, applyFill: 1, applyAlignment: 1 }, [alignment]),
      )
    })
  }

  private font(bold: boolean, italic: boolean): number {
    if (!bold && !italic) return 0
    return this.once(`font ${bold} ${italic}`, () => {
      const list = this.list('fonts')
      const [standard] = children(list, 'font')
      const font = standard ? (standard.cloneNode(true) as Element) : make(list, 'font')
      for (const name of ['b', 'i']) for (const old of children(font, name)) font.removeChild(old)
      if (italic) font.insertBefore(make(list, 'i'), font.firstChild)
      if (bold) font.insertBefore(make(list, 'b'), font.firstChild)
      return this.append(list, font)
    })
  }

  private fill(colour: string | null): number {
    if (colour === null) return 0
    return this.once(`fill ${colour}`, () => {
      const list = this.list('fills')
      return this.append(list, make(list, 'fill', {}, [this.pattern(list, colour)]))
    })
  }

  private pattern(list: Element, colour: string): Element {
    const rgb = `FF${colour}`
    return make(list, 'patternFill', { patternType: 'solid' }, [
      make(list, 'fgColor', { rgb }),
      make(list, 'bgColor', { rgb }),
    ])
  }

  private border(list: Element, style: string, ink: string): Element {
    const side = (name: string) => make(list, name, { style }, [make(list, 'color', { rgb: `FF${ink}` })])
    return make(list, 'border', {}, ['left', 'right', 'top', 'bottom'].map(side))
  }

  /** A number for a number format that the workbook does not use yet; those below 164 are built in. */
  private freeFormat(): number {
    const used = Array.from(this.root.getElementsByTagNameNS('*', 'numFmt'), (each) =>
      Number(each.getAttribute('numFmtId')),
    )
    return Math.max(163, ...used) + 1
  }

  private list(name: string): Element {
    return ensureChild(this.root, name, ORDER.slice(ORDER.indexOf(name) + 1))
  }

  private append(list: Element, entry: Element): number {
    list.appendChild(entry)
    const count = children(list).length
    list.setAttribute('count', String(count))
    return count - 1
  }

  private once(key: string, add: () => number): number {
    const number = this.known.get(key) ?? add()
    this.known.set(key, number)
    return number
  }
}
