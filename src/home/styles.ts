import { FONT, SIZES } from '../lesson/cells/paper'

const { title, heading, text, small } = SIZES.pupil

type Line = 'thin' | 'medium'

/** How cells of a home workbook look. Everything is told by words and lines, nothing by colour. `free` cells can be typed in. */
interface Style {
  readonly size: number
  readonly bold?: boolean
  readonly wrap?: boolean
  readonly align?: 'center' | 'indent'
  readonly border?: Partial<Record<'left' | 'right' | 'top' | 'bottom', Line>>
  readonly free?: boolean
  /** Whether the formula bar shows no formula while the sheet is protected. */
  readonly concealed?: boolean
}

const box = (line: Line) => ({ left: line, right: line, top: line, bottom: line })

const STYLES = {
  plain: { size: small },
  title: { size: title, bold: true },
  text: { size: text },
  small: { size: small },
  heading: { size: text, bold: true, border: { bottom: 'medium' } },
  number: { size: text, align: 'center' },
  question: { size: heading, bold: true },
  answer: { size: heading, align: 'center', border: box('medium'), free: true },
  name: { size: heading, border: box('medium'), free: true },
  says: { size: text, wrap: true, align: 'indent', concealed: true },
  square: { size: text, align: 'center', border: box('thin') },
  working: { size: text, align: 'center', border: box('thin'), free: true },
  total: { size: text, align: 'center', border: { ...box('thin'), top: 'medium' }, free: true },
} as const satisfies Record<string, Style>

export type StyleName = keyof typeof STYLES

const NAMES = Object.keys(STYLES) as StyleName[]
const ALL: readonly Style[] = NAMES.map((name) => STYLES[name])

/** The number of a style in the styles' part. */
export function styleNumber(name: StyleName): number {
  return NAMES.indexOf(name)
}

/** What can be typed in keeps its text as it is typed: number format 49, "@" (ECMA-376, numFmtId). */
const AS_TYPED = 49

/** The styles' part: one font, one border and one cell format for each style. */
export function stylesXml(): string {
  const fonts = ALL.map(
    ({ size, bold = false }) => `<font>${bold ? '<b/>' : ''}<sz val="${size}"/><name val="${FONT}"/></font>`,
  )
  const borders = ALL.map(({ border = {} }) => {
    const side = (name: keyof typeof border) => {
      const line: Line | undefined = border[name]
      return line ? `<${name} style="${line}"><color auto="1"/></${name}>` : `<${name}/>`
    }
    return `<border>${side('left')}${side('right')}${side('top')}${side('bottom')}<diagonal/></border>`
  })
  const formats = ALL.map(({ wrap = false, align, free = false, concealed = false }, index) => {
    const across =
      align === 'indent' ? ' horizontal="left" indent="1"' : ` horizontal="${align ?? 'general'}"`
    const lock = free ? ' locked="0"' : concealed ? ' hidden="1"' : ''
    return (
      `<xf numFmtId="${free ? AS_TYPED : 0}" fontId="${index}" fillId="0" borderId="${index}" xfId="0" ` +
      'applyNumberFormat="1" applyFont="1" applyBorder="1" applyAlignment="1" applyProtection="1">' +
      `<alignment${across} vertical="center"${wrap ? ' wrapText="1"' : ''}/>` +
      `${lock && `<protection${lock}/>`}</xf>`
    )
  })
  const list = (name: string, items: readonly string[]) =>
    `<${name} count="${items.length}">${items.join('')}</${name}>`
  return (
    '<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">' +
    list('fonts', fonts) +
    list(
      'fills',
      ['none', 'gray125'].map((fill) => `<fill><patternFill patternType="${fill}"/></fill>`),
    ) +
    list('borders', borders) +
    list('cellStyleXfs', ['<xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>']) +
    list('cellXfs', formats) +
    list('cellStyles', ['<cellStyle name="Normal" xfId="0" builtinId="0"/>']) +
    '</styleSheet>'
  )
}
