import { beforeAll, describe, expect, it } from 'vitest'
import * as XLSX from 'xlsx'
import { LOOKS } from '../../src/marksheet/marking/looks'
import { NOTES_TITLE } from '../../src/marksheet/marking/notes'
import { review } from '../../src/marksheet/marking/review'
import { lookOf } from '../../src/marksheet/marking/rules'
import { matricesOf } from '../marksheets'
import { allConverted, allShownFills, LIBREOFFICE } from './libreoffice'
import { markedCopy } from './marked'

/** Comma-separated values (RFC 4180, from memory): a field with commas, quotation marks or line breaks in quotation marks, its own doubled. */
function csv(rows: readonly (readonly string[])[]): Uint8Array {
  const field = (text: string) => (/[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)
  return new TextEncoder().encode(rows.map((row) => `${row.map(field).join(',')}\r\n`).join(''))
}

/** A form that notes the time of each response and asks for the name, each question, and what was hard (common practice, no source). */
const SURVEY: readonly (readonly string[])[] = [
  [
    'Timestamp',
    'Email Address',
    'What is your name?\n("first name", then surname)',
    'What is 532 − 217?',
    'Question 2\n603 − 245 = ?',
    '3. Work out\n4,003 − 1,567',
    '  940 − 268  ',
    'Which was hardest, and "why"?\n(any words you like)',
  ],
  ['2026/11/06 9:12:05 am GMT', 'a@school.example', 'Patel, Amira', '315', '358', '2,436', '672', ''],
  ['2026/11/06 9:12:44 am GMT', 'b@school.example', ' Bertie L ', '325', '442', '3, 564', '728', '3, it was'],
  [
    '2026/11/06 9:13:01 am GMT',
    'c@school.example',
    'Cerys "Cez" Hughes',
    ' 315 ',
    '358.',
    '?',
    '',
    'I like "3",\nso',
  ],
  ['2026/11/06 9:20:30 am GMT', 'd@school.example', 'Daniel O', '=315', '3-4', '2 436', '672\n', '532 − 217'],
  ['2026/11/06 9:31:12 am GMT', 'b@school.example', 'Bertie L', '315', '358', '2436', '672', 'second go'],
  ['2026/11/06 9:33:40 am GMT', 'b@school.example', 'Bertie L', '315', '', '', '', 'third'],
]

/** A quiz that counts points: beside each question a column of points and one of feedback, under its text again (common practice, no source). */
const QUIZ: readonly (readonly string[])[] = [
  [
    'ID',
    'Start time',
    'Completion time',
    'Email',
    'Name',
    'Total points',
    'Quiz feedback',
    ...['What is 532 − 217?', 'Work out\n603 − 245', '4,003 − 1,567'].flatMap((text) => [
      text,
      `Points - ${text}`,
      `Feedback - ${text}`,
    ]),
  ],
  [
    '1',
    '06/11/2026 09:12:05',
    '06/11/2026 09:20:05',
    'a@school.example',
    'Amira P',
    '3',
    '',
    '315',
    '1',
    '',
    '358',
    '1',
    'yes, "358"',
    '2,436',
    '1',
    '',
  ],
  [
    '2',
    '06/11/2026 09:12:44',
    '06/11/2026 09:21:05',
    'b@school.example',
    'Bertie L',
    '0',
    '',
    '325',
    '0',
    '',
    '442',
    '0',
    '',
    '3,564',
    '0',
    '',
  ],
  [
    '3',
    '06/11/2026 09:13:44',
    '06/11/2026 09:22:05',
    'c@school.example',
    'Cerys H',
    '1',
    '',
    ' 315',
    '1',
    '',
    'n/a',
    '0',
    '',
    'abs',
    '0',
    '',
  ],
]

/**
 * What is to be found: the columns of the questions, their answers, and each response with its outcomes. In both, the second response takes the
 * smaller digit from the larger wherever it can be told, so that its name is flagged where no other response has it, and noted either way.
 */
const FORMS = {
  'a form of questions': {
    rows: SURVEY,
    noted: 2,
    flagged: null,
    questions: [
      [3, '315'],
      [4, '358'],
      [5, '2436'],
      [6, '672'],
    ],
    responses: [
      ['Patel, Amira', 'correct', 'correct', 'correct', 'correct'],
      ['Bertie L', 'incorrect', 'incorrect', 'unreadable', 'incorrect'],
      ['Cerys "Cez" Hughes', 'correct', 'correct', 'unreadable', 'blank'],
      ['Daniel O', 'correct', 'unreadable', 'correct', 'correct'],
      ['Bertie L', 'correct', 'correct', 'correct', 'correct'],
      ['Bertie L', 'correct', 'blank', 'blank', 'blank'],
    ],
  },
  'a quiz with points': {
    rows: QUIZ,
    noted: 2,
    flagged: { row: 2, column: 4 },
    questions: [
      [7, '315'],
      [10, '358'],
      [13, '2436'],
    ],
    responses: [
      ['Amira P', 'correct', 'correct', 'correct'],
      ['Bertie L', 'incorrect', 'incorrect', 'incorrect'],
      ['Cerys H', 'correct', 'blank', 'absent'],
    ],
  },
} as const

const NAMES = Object.keys(FORMS) as (keyof typeof FORMS)[]

/** A form's export as LibreOffice makes a workbook of it, its marked copy, that copy saved by LibreOffice, and the fills it shows there. */
interface Export {
  readonly bytes: Uint8Array
  readonly marked: Uint8Array
  readonly saved: Uint8Array
  readonly fills: readonly (readonly (string | null)[])[]
}

/** Each cell's address with its type and value, read by an independent library from a workbook's first sheet. */
function cellsOf(bytes: Uint8Array): Map<string, unknown> {
  const { SheetNames, Sheets } = XLSX.read(bytes)
  const cells = Object.entries(Sheets[SheetNames[0] ?? ''] ?? {}).filter(([key]) => !key.startsWith('!'))
  return new Map(
    cells.map(([key, cell]) => [key, [(cell as XLSX.CellObject).t, (cell as XLSX.CellObject).v]]),
  )
}

describe.skipIf(LIBREOFFICE === null)('the export of a form, made a workbook by LibreOffice', () => {
  const exports = new Map<string, Export>()
  const exported = (form: string): Export => {
    const found = exports.get(form)
    if (!found) throw new Error(`There is no ${form}.`)
    return found
  }

  beforeAll(async () => {
    const books = await allConverted(
      NAMES.map((form) => csv(FORMS[form].rows)),
      'csv',
      'xlsx',
    )
    const marked: Uint8Array[] = []
    for (const bytes of books) marked.push(await markedCopy(bytes))
    const saved = await allConverted(marked, 'xlsx', 'xlsx')
    const fills = await allShownFills(marked)
    NAMES.forEach((form, index) => {
      const [bytes, copy, again] = [books[index], marked[index], saved[index]]
      if (bytes && copy && again)
        exports.set(form, { bytes, marked: copy, saved: again, fills: fills[index] ?? [] })
    })
  })

  describe.each(NAMES)('%s', (form) => {
    const { rows, questions, responses, noted, flagged } = FORMS[form]

    it('keeps its headings, with their quotation marks and line breaks', async () => {
      const [matrix] = await matricesOf(exported(form).bytes)
      expect(matrix?.values[0]).toEqual(rows[0])
    })

    it.each(['bytes', 'marked', 'saved'] as const)(
      'is found by the questions in its headings, each response marked, all those of one pupil too (%s)',
      async (which) => {
        const [found, ...others] = (await matricesOf(exported(form)[which])).flatMap((each) => review(each))
        expect(others).toEqual([])
        expect(found?.questions.map(({ column, key }) => [column, key.value])).toEqual(questions)
        expect(found?.pupils.map(({ name, outcomes }) => [name, ...outcomes])).toEqual(responses)
        expect(found?.pupils.map(({ nameCells }) => nameCells[0]?.row)).toEqual(
          responses.map((_, index) => index + 1),
        )
      },
    )

    it('loses no cell in the marked copy, and none when LibreOffice saves that; only the note of the response in need comes in', () => {
      const { bytes, marked, saved } = exported(form)
      const [before, copy, again] = [bytes, marked, saved].map(cellsOf)
      expect(before?.size).toBeGreaterThan(rows.length * 6)
      for (const [address, cell] of before ?? []) {
        expect([address, copy?.get(address)]).toEqual([address, cell])
        expect([address, again?.get(address)]).toEqual([address, cell])
      }
      const added = [...(copy ?? [])].filter(([address]) => !before?.has(address))
      expect(added.map(([address, cell]) => [Number(/\d+$/.exec(address)?.[0]), cell])).toEqual([
        [1, ['s', NOTES_TITLE]],
        [noted + 1, ['s', expect.stringMatching(/^takes the smaller digit from the larger/)]],
      ])
    })

    it('shows each answer and the flagged name in the colour of what is expected, and no other cell of the form in one', () => {
      const { fills } = exported(form)
      const columns = questions.map(([column]): number => column)
      const wanted = rows.slice(1).map((row, index) =>
        row.map((_, column) => {
          if (index + 1 === flagged?.row && column === flagged.column) return LOOKS.flag.fill
          const [, ...outcomes] = responses[index] ?? []
          const outcome = outcomes[columns.indexOf(column)]
          const look = outcome === undefined ? null : lookOf(outcome)
          return look && LOOKS[look].fill
        }),
      )
      const shown = wanted.map((row, index) => row.map((_, column) => fills[index + 1]?.[column] ?? null))
      expect(shown).toEqual(wanted)
    })
  })
})
