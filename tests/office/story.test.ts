import { describe, expect, it } from 'vitest'
import type { Bench } from '../../src/bench/bench'
import { drawSet } from '../../src/items/sets'
import { answerKey } from '../../src/answers/typed'
import { numeralText } from '../../src/arithmetic/numeral'
import { printQuestion, type Question } from '../../src/arithmetic/question'
import { faultyAnswer } from '../../src/marksheet/setting/nextSet'
import { questionsIn } from '../../src/marksheet/record/record'
import { OWN_SHEET } from '../../src/marksheet/layout/find'
import { addressOf } from '../../src/marksheet/layout/matrix'
import { supportGroups } from '../../src/mastery/support'
import { readSetBook } from '../../src/office/questions/target'
import { layOutMarksheet } from '../../src/office/questions/writeQuestions'
import { readSheet } from '../../src/office/workbook/read'
import { Marker } from '../../taskpane/mark/marker'
import { peopleInRecord, type Person } from '../../taskpane/review/pupils/people'
import { Reviewer } from '../../taskpane/review/reviewer'
import { Front } from '../../taskpane/common/front'
import { Runner } from '../../taskpane/common/runner'
import { benchWith } from './host'

const NAMES = ['Amira P', 'Bertie L', 'Cerys H', 'Daniel O']
const [LEARNS, STAYS, KNOWS, AWAY] = NAMES
const FRIDAYS = ['2026-11-06', '2026-11-13', '2026-11-20']
const QUESTIONS = 8

const rightAnswer = (question: Question) => numeralText(answerKey(question).numeral)
const wrongAnswer = (question: Question) => faultyAnswer('takes-smaller-from-larger', question)

/** What each child types in each week: Amira learns after the first, Bertie does not, Cerys knows it, Daniel is away in the second. */
function typedBy(name: string | undefined, week: number, question: Question): string {
  if (name === KNOWS || (name === LEARNS && week > 0)) return rightAnswer(question)
  if (name === AWAY && week === 1) return 'abs'
  return wrongAnswer(question)
}

/** A week: a fresh set laid out for the names, answers typed, the sheet marked and added to Record. */
async function teach(
  bench: Bench,
  week: number,
): Promise<{ people: Person[]; questions: readonly Question[] }> {
  const runner = new Runner()
  const front = new Front()
  const reviewer = new Reviewer(runner, front)
  await reviewer.look()
  const drawn = drawSet({
    kind: {
      operation: 'subtract',
      type: 'one exchange, tens to ones',
      topDigits: 3,
      bottomDigits: 3,
      zerosBelow: false,
    },
    count: QUESTIONS,
    seed: week,
    avoid: questionsIn(reviewer.state().record?.rows ?? []),
  })
  if ('problem' in drawn) throw new Error(drawn.problem)
  const { questions } = drawn
  const sheet = `Week ${week + 1}`
  const wanted = { questions, set: String(week), recipe: 'one exchange', withKey: true }
  const written = await layOutMarksheet(wanted, { sheet, title: sheet, names: NAMES }, await readSetBook())
  bench.grid.activateSheet(bench.sheetId(written.sheet))
  const marker = new Marker(runner, front)
  await marker.look()
  for (const { name, answers } of marker.state().seen?.marksheets[0]?.pupils ?? [])
    for (const cell of answers) {
      const question = questions[cell.question]
      if (question) bench.userEdit(written.sheet, addressOf(cell), [[typedBy(name, week, question)]])
    }
  await marker.mark()
  await reviewer.look()
  await reviewer.addToRecord('Kingfisher', FRIDAYS[week] ?? '', new Map())
  await reviewer.look()
  expect(runner.state().notice?.kind).toBe('done')
  const { record, settings } = reviewer.state()
  return { questions, people: peopleInRecord(record?.rows ?? [], 'Kingfisher', settings.mastery) }
}

const needing = (people: readonly Person[]) =>
  people.filter(({ judgement }) => judgement.needsSupport).map(({ name }) => name)

describe('three weeks from a workbook that holds only names', () => {
  it('take a pupil who learns off the list, and keep one who does not and one who was away', async () => {
    const bench = await benchWith({ name: 'Class', values: [['Name'], ...NAMES.map((name) => [name])] })
    Office.context.document.settings.remove('columnwise')
    const weeks = []
    for (const week of FRIDAYS.keys()) weeks.push(await teach(bench, week))
    expect(weeks.map(({ people }) => needing(people))).toEqual([
      [LEARNS, STAYS, AWAY],
      [STAYS, AWAY],
      [STAYS, AWAY],
    ])
    const last = weeks.at(-1)?.people ?? []
    const standing = (name: string | undefined) =>
      last
        .find((person) => person.name === name)
        ?.judgement.byType.map(({ right, tried, status }) => [right, tried, status])
    expect(standing(LEARNS)).toEqual([[16, 24, 'secure']])
    expect(standing(STAYS)).toEqual([[0, 24, 'needs support']])
    expect(standing(AWAY)).toEqual([[0, 16, 'needs support']])
    expect(supportGroups(last, 6).map(({ pupils }) => pupils.map(({ name }) => name).toSorted())).toEqual([
      [STAYS, AWAY],
    ])
    const printed = weeks.flatMap(({ questions }) => questions.map(printQuestion))
    expect(new Set(printed).size).toBe(3 * QUESTIONS)
    const sheets = bench.grid.sheets().filter(({ visible }) => visible)
    expect(sheets.map(({ name }) => name).toSorted()).toEqual(
      ['Class', 'Week 1', 'Week 2', 'Week 3', 'Answer key', 'Mastery', 'Record'].toSorted(),
    )
    const { matrix } = await readSheet(bench.sheetId('Record'))
    expect(matrix.values[0]?.[0]).toBe(`${OWN_SHEET}Record`)
    expect(matrix.values.length).toBe(3 + 3 * QUESTIONS * NAMES.length)
    expect(bench.host.unsupported).toEqual(new Map())
  })
})
