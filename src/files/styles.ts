import type { Look } from '../marksheet/marking/looks'
import { Edits } from './xlsx/edits'
import { behind, element, placeBefore, rootOf, type Child, type Root } from './xlsx/elements'
import { attributesOf, tagsOf } from './xlsx/xml'

/** How a cell that the add-in writes looks. `fill` is six hexadecimal digits. */
export interface CellStyle {
  readonly bold: boolean
  readonly italic: boolean
  readonly fill: string | null
  readonly wrap: boolean
  /** Whether the text runs up the cell. */
  readonly upright: boolean
}

/** What the schema of a style part (ECMA-376, CT_Stylesheet) holds, in order. */
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

type ListName = 'fonts' | 'fills' | 'borders' | 'cellXfs' | 'dxfs'

/** What a list holds before anything else: the standard look, and the two fills that programs take for granted. */
const FIRST: Readonly<Record<ListName, readonly string[]>> = {
  fonts: ['<font/>'],
  fills: [
    '<fill><patternFill patternType="none"/></fill>',
    '<fill><patternFill patternType="gray125"/></fill>',
  ],
  borders: ['<border/>'],
  cellXfs: ['<xf/>'],
  dxfs: [],
}

/** Adds styles to a workbook's style part; asking twice for the same one gives the same number. */
export class Styles {
  private readonly root: Root
  private readonly prefix: string
  private readonly known = new Map<string, number>()
  private readonly added = new Map<ListName, string[]>()
  private readonly counts = new Map<string, number>()
  private standardFont = ''
  private highestFormat = 163

  constructor(private readonly xml: string) {
    this.root = rootOf(xml)
    this.prefix = this.root.tag.prefix
    let list = ''
    let font = 0
    for (const tag of tagsOf(xml)) {
      if (tag.depth === 1) list = tag.name
      if (tag.name === 'numFmt' && tag.kind !== 'close')
        this.highestFormat = Math.max(this.highestFormat, Number(attributesOf(xml, tag).get('numFmtId')) || 0)
      if (tag.depth === 2 && tag.kind !== 'close') this.counts.set(list, (this.counts.get(list) ?? 0) + 1)
      if (list !== 'fonts' || this.counts.get('fonts') !== 1) continue
      // Of the standard font everything but its weight and slope, which are written anew.
      if (tag.depth === 2 && tag.kind === 'open') font = tag.end
      if (tag.depth === 3 && (tag.name === 'b' || tag.name === 'i')) {
        if (tag.kind !== 'close') this.standardFont += xml.slice(font, tag.start)
        font = tag.end
      }
      if (tag.depth === 2 && tag.kind === 'close') this.standardFont += xml.slice(font, tag.start)
    }
  }

  /** The number of the differential style for a look. */
  differential(look: Look): number {
    return this.once(`look ${JSON.stringify(look)}`, () => {
      const font = this.make('font', {}, [
        this.make('b', { val: Number(look.bold) }),
        this.make('i', { val: Number(look.italic) }),
        this.make('u', { val: look.underline ? 'single' : 'none' }),
        this.make('color', { rgb: `FF${look.ink}` }),
      ])
      const format =
        look.numberFormat === null
          ? ''
          : this.make('numFmt', { numFmtId: ++this.highestFormat, formatCode: look.numberFormat })
      const fill = this.make('fill', {}, [this.pattern(look.fill)])
      const border = look.border === null ? '' : this.border(look.border, look.ink)
      return this.append('dxfs', this.make('dxf', {}, [font, format, fill, border]))
    })
  }

  /** The number of the cell style, built on the workbook's standard font. */
  cell(style: CellStyle): number {
    const { bold, italic, fill, wrap, upright } = style
    return this.once(`cell ${JSON.stringify(style)}`, () => {
      const alignment = this.make('alignment', {
        vertical: 'top',
        ...(wrap ? { wrapText: 1 } : {}),
        ...(upright ? { textRotation: 90 } : {}),
      })
      const attributes = {
        numFmtId: 0,
        fontId: this.font(bold, italic),
        fillId: this.fill(fill),
        borderId: 0,
        xfId: 0,
        applyFont: 1,
        applyFill: 1,
        applyAlignment: 1,
      }
      return this.append('cellXfs', this.make('xf', attributes, [alignment]))
    })
  }

  /** The style part with what was added. */
  result(): string {
    const edits = new Edits(this.xml)
    for (const name of ORDER) {
      const added = this.added.get(name as ListName)
      if (!added) continue
      const count = this.counts.get(name) ?? 0
      const list = this.root.children.find((child) => child.name === name)
      if (list) this.extend(edits, list, added, count)
      else edits.insert(placeBefore(this.root, behind(ORDER, name)), this.make(name, { count }, added))
    }
    return edits.result()
  }

  private extend(
    edits: Edits,
    { name, tag, contentEnd }: Child,
    added: readonly string[],
    count: number,
  ): void {
    const start = this.xml
      .slice(tag.start, tag.end)
      .replace(/(\scount\s*=\s*)(?:"[^"]*"|'[^']*')/, `$1"${count}"`)
      .replace(/\s*\/>$/, '>')
    const end = tag.kind === 'empty' ? `</${this.prefix}${name}>` : ''
    edits.replace(tag.start, tag.end, start)
    edits.insert(contentEnd, added.join('') + end)
  }

  private font(bold: boolean, italic: boolean): number {
    if (!bold && !italic) return 0
    return this.once(`font ${bold} ${italic}`, () =>
      this.append(
        'fonts',
        this.make('font', {}, [bold ? this.make('b') : '', italic ? this.make('i') : '', this.standardFont]),
      ),
    )
  }

  private fill(colour: string | null): number {
    if (colour === null) return 0
    return this.once(`fill ${colour}`, () =>
      this.append('fills', this.make('fill', {}, [this.pattern(colour)])),
    )
  }

  private pattern(colour: string): string {
    const rgb = `FF${colour}`
    return this.make('patternFill', { patternType: 'solid' }, [
      this.make('fgColor', { rgb }),
      this.make('bgColor', { rgb }),
    ])
  }

  private border(style: string, ink: string): string {
    const side = (name: string) => this.make(name, { style }, [this.make('color', { rgb: `FF${ink}` })])
    return this.make('border', {}, ['left', 'right', 'top', 'bottom'].map(side))
  }

  private make(
    name: string,
    attributes: Readonly<Record<string, string | number>> = {},
    content: readonly string[] = [],
  ): string {
    return element(this.prefix + name, attributes, content.join(''))
  }

  private append(name: ListName, entry: string): number {
    const added = this.added.get(name) ?? []
    this.added.set(name, added)
    let count = this.counts.get(name) ?? 0
    for (const first of FIRST[name].slice(count)) {
      added.push(first.replace(/<(\/?)/g, `<$1${this.prefix}`))
      count++
    }
    added.push(entry)
    this.counts.set(name, count + 1)
    return count
  }

  private once(key: string, add: () => number): number {
    const number = this.known.get(key) ?? add()
    this.known.set(key, number)
    return number
  }
}
