import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { reviewTable } from '../../src/files/table'
import { visible, visibleJson } from '../../src/files/visible'
import { review } from '../../src/marksheet/marking/review'

const STEERS = /[\p{Cc}\p{Bidi_Control}\u2028\u2029]/u

describe('what goes to a terminal', () => {
  it('shows controls and direction overrides as escapes, and leaves names as they are', () => {
    expect(visible('Orla \u{1b}[2JB\u{9b}1m \u{202e}x')).toBe('Orla \\u{1b}[2JB\\u{9b}1m \\u{202e}x')
    expect(visible('Zoë Ó, 花子, Amélie 🦉')).toBe('Zoë Ó, 花子, Amélie 🦉')
  })

  it('holds no sign that steers it, whatever the text; JSON means the same', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(visible(text)).not.toMatch(STEERS)
        const json = visibleJson(JSON.stringify({ text }))
        expect(json).not.toMatch(STEERS)
        expect(JSON.parse(json)).toEqual({ text })
      }),
    )
    const all = Array.from({ length: 0x3000 }, (_, code) => String.fromCharCode(code)).join('')
    expect(visible(all)).not.toMatch(STEERS)
    expect(JSON.parse(visibleJson(JSON.stringify(all)))).toBe(all)
  })

  it('names of pupils and sheets in the table are shown so', () => {
    const table = reviewTable(
      review({
        name: 'Owls\u{202e}',
        values: [
          ['Name', '932 − 457', '305 − 128', '604 − 37'],
          ['Amina K', 475, 177, 567],
          ['Orla\u{1b}[31m B', 475, 177, 567],
        ],
      }),
    )
    expect(table.replaceAll('\n', '')).not.toMatch(STEERS)
    expect(table).toContain('Owls\\u{202e} A1:D3')
    expect(table).toContain('Orla\\u{1b}[31m B')
  })
})
