import { describe, expect, it } from 'vitest'
import { answerKey } from '../../src/answers/typed'
import { numeralText } from '../../src/arithmetic/numeral'
import { faultyAnswer } from '../../src/marksheet/setting/nextSet'
import { expectQuiet, openStage, useStage, type Stage } from './stage'
import { asked } from '../support/asked'

useStage()

const NAMES = ['Amira P', 'Bertie L', 'Cerys H']
const WEEKS = ['2026-11-06', '2026-11-13', '2026-11-20']
/** The row of a laid-out marksheet that holds the questions, from 0. */
const QUESTIONS = 2

const button = ({ pane }: Stage, name: string | RegExp) => pane.getByRole('button', { name })
const tab = ({ pane }: Stage, name: string) => pane.getByRole('tab', { name, exact: true })

/** Types the answers of everybody into the sheet in front: Amira learns after the first week, Bertie does not, Cerys knows it. */
async function typeAnswers({ page }: Stage, week: number): Promise<void> {
  const row = (at: number) =>
    page.evaluate((top) => {
      const grid = window.columnwiseBench?.bench.grid
      return grid?.values(grid.activeSheet(), { row: top, col: 1, rows: 1, cols: 10 })[0] ?? []
    }, at)
  const questions = (await row(QUESTIONS)).map((text) => asked(String(text)))
  const right = questions.map((question) => numeralText(answerKey(question).numeral))
  const wrong = questions.map((question) => faultyAnswer('takes-smaller-from-larger', question))
  const typed = [week > 0 ? right : wrong, wrong, right]
  await page.evaluate(
    ({ answers, first }) => {
      const bench = window.columnwiseBench?.bench
      const front = bench?.grid.sheets().find(({ id }) => id === bench.grid.activeSheet())
      if (front) bench?.userEdit(front.name, `B${first}`, answers)
      bench?.grid.flush()
    },
    { answers: typed, first: QUESTIONS + 2 },
  )
}

describe('the whole story in the pane', () => {
  it('from names over three weeks: a pupil who learns leaves the list, one who does not stays', async () => {
    const stage = await openStage()
    const { pane, page } = stage
    await page.evaluate((names) => {
      const grid = window.columnwiseBench?.bench.grid
      if (!grid) return
      const demo = grid.activeSheet()
      const id = grid.addSheet('Class')
      grid.write(id, 0, 0, [['Name'], ...names.map((name) => [name])])
      grid.activateSheet(id)
      grid.removeSheet(demo)
      grid.flush()
    }, NAMES)
    for (const [week, day] of WEEKS.entries()) {
      await tab(stage, 'Set').click()
      await pane.getByText(/^3 names in /).waitFor()
      await pane.getByRole('textbox', { name: 'Set number' }).fill(String(2001 + week))
      await button(stage, 'Lay out a marksheet').click()
      await pane.getByText(/^The marksheet is on the sheet/).waitFor()
      await typeAnswers(stage, week)
      await tab(stage, 'Mark').click()
      await button(stage, 'Look again').click()
      await pane.getByText('3 pupils, 10 questions, 30 of 30 answers entered.').waitFor()
      await button(stage, /^Mark (?:this sheet|again)$/).click()
      await pane.getByText('is marked.').waitFor()
      await tab(stage, 'Review').click()
      await tab(stage, 'Record').click()
      await button(stage, 'Look again').click()
      if (week === 0) await pane.getByRole('textbox', { name: 'Class' }).fill('Kingfisher')
      await pane.getByLabel('Day of the questions').fill(day)
      await button(stage, /^Add .* to Record$/).click()
      await pane.getByText('is in Record: 30 answers of').waitFor()
      await pane
        .getByText(`${30 * (week + 1)} answers of`)
        .last()
        .waitFor()
    }
    await pane.getByRole('combobox', { name: 'Judge by' }).selectOption({ label: 'Record: Kingfisher' })
    await tab(stage, 'Groups').click()
    await expect.poll(() => pane.locator('.group .names button').allTextContents()).toEqual(['Bertie L'])
    await tab(stage, 'Pupils').click()
    expect((await pane.locator('.heat tbody th').allTextContents())[0]).toBe('Bertie L')
    await button(stage, 'Amira P').click()
    await pane.getByText('6 November 2026').waitFor()
    expect(await pane.locator('.occasions > li').count()).toBe(3)
    expectQuiet(stage)
    await page.close()
  }, 120_000)
})
