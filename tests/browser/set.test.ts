import { describe, expect, it } from 'vitest'
import { axeProblems, expectQuiet, openStage, tabTo, useStage, type Setting, type Stage } from './stage'

useStage()

const NAMES = ['Amira P', 'Bertie L', 'Cerys H', 'Daniel O']

const button = ({ pane }: Stage, name: string | RegExp) => pane.getByRole('button', { name })
const choice = ({ pane }: Stage, name: string) => pane.getByRole('combobox', { name })
const drawn = ({ pane }: Stage) =>
  pane.getByRole('list', { name: 'Questions drawn' }).locator('.sum').allTextContents()

/** A workbook that holds nothing but names, with the Set area open. */
async function openSet(setting: Setting = {}): Promise<Stage> {
  const stage = await openStage(setting)
  await stage.page.evaluate((names) => {
    const grid = window.columnwiseBench?.bench.grid
    if (!grid) return
    const demo = grid.activeSheet()
    const id = grid.addSheet('Class')
    grid.write(id, 0, 0, [['Name'], ...names.map((name) => [name])])
    grid.activateSheet(id)
    grid.removeSheet(demo)
    grid.flush()
  }, NAMES)
  await stage.pane.getByRole('tab', { name: 'Set' }).click()
  await stage.pane.getByText('4 names in Class, A2:A5.').waitFor()
  return stage
}

/** The cells of the sheet in front from A1 on. */
const cells = ({ page }: Stage, rows: number, cols: number) =>
  page.evaluate(
    (size) => {
      const grid = window.columnwiseBench?.bench.grid
      return grid?.values(grid.activeSheet(), { row: 0, col: 0, ...size }) ?? []
    },
    { rows, cols },
  )

const sheetNames = ({ page }: Stage) =>
  page.evaluate(() =>
    window.columnwiseBench?.bench.grid
      .sheets()
      .filter(({ visible }) => visible)
      .map(({ name }) => name),
  )

describe('the Set area', () => {
  it('makes a marksheet of a workbook that holds only names in two actions, and Undo takes it back', async () => {
    const stage = await openSet()
    const questions = await drawn(stage)
    expect(questions).toHaveLength(10)
    await button(stage, 'Lay out a marksheet').click()
    await stage.pane.getByText(/^The marksheet is on the sheet Subtraction \d+ \w{3}\./).waitFor()
    expect(await sheetNames(stage)).toEqual([
      'Class',
      expect.stringMatching(/^Subtraction \d+ \w{3}$/),
      'Answer key',
    ])
    const [title, , head, ...pupils] = await cells(stage, 7, 11)
    expect(title?.[0]).toMatch(/^Column subtraction, four-digit numbers \(set \d{4}\)$/)
    expect(head).toEqual(['Name', ...questions])
    expect(pupils).toEqual(NAMES.map((name) => [name, ...questions.map(() => '')]))
    await stage.pane.getByRole('tab', { name: 'Mark' }).click()
    await stage.pane.getByText('4 pupils, 10 questions, 0 of 40 answers entered.').waitFor()
    await button(stage, /^Undo/).click()
    await stage.pane.getByText(/^Undone:/).waitFor()
    expect(await sheetNames(stage)).toEqual(['Class'])
    expectQuiet(stage)
    await stage.page.close()
  })

  it('gives a parallel class the same set for the set number, and another for another draw', async () => {
    const stage = await openSet()
    const number = stage.pane.getByRole('textbox', { name: 'Set number' })
    const shared = await number.inputValue()
    const questions = await drawn(stage)
    await button(stage, 'Another draw').click()
    expect(await number.inputValue()).not.toBe(shared)
    expect(await drawn(stage)).not.toEqual(questions)
    await number.fill(shared)
    expect(await drawn(stage)).toEqual(questions)
    await stage.page.close()
  })

  it('shows type, number of such questions and objective for a single type, and refuses what cannot be with a sentence', async () => {
    const stage = await openSet()
    await choice(stage, 'Questions').selectOption({ label: 'Through a zero' })
    await stage.pane.getByText(/^There are [\d,]+ such questions\.$/).waitFor()
    await stage.pane
      .getByRole('region', { name: 'What to set' })
      .getByText(/I can exchange through a zero/)
      .waitFor()
    expect(new Set(await stage.pane.locator('.drawn .quiet').allTextContents())).toEqual(
      new Set(['through a zero']),
    )
    await stage.pane.getByRole('spinbutton', { name: 'How many' }).fill('41')
    await stage.pane.getByText('Choose 1 to 40 questions.').waitFor()
    expect(await button(stage, 'Lay out a marksheet').isDisabled()).toBe(true)
    await stage.pane.getByRole('spinbutton', { name: 'How many' }).fill('12')
    await choice(stage, 'Numbers').selectOption({ label: 'My own choice of numbers' })
    await choice(stage, 'Written as').selectOption({ label: 'Pounds and pence' })
    await choice(stage, 'Top digits').selectOption('1')
    await stage.pane.getByText(/^! No set\. The bottom number has more digits/).waitFor()
    await choice(stage, 'Bottom digits').selectOption('1')
    expect((await drawn(stage))[0]).toMatch(/^£\d\.\d\d − £\d\.\d\d$/)
    await stage.page.close()
  })

  it('says what a set can and cannot tell apart', async () => {
    const stage = await openSet()
    await choice(stage, 'Questions').selectOption({ label: 'Find out why answers go wrong' })
    await stage.pane.getByText(/^Tells 1\d of 1\d known faults from the right way of working/).waitFor()
    await stage.pane.getByText('What it can and cannot tell').click()
    await stage.pane
      .getByText('Takes the smaller digit from the larger in every column, whichever is on top.')
      .waitFor()
    expect(await axeProblems(stage.pane)).toEqual([])
    await stage.page.close()
  })

  it('asks before cells are written over, and writes across from the selected cell', async () => {
    const stage = await openSet()
    const select = (address: string) =>
      stage.page.evaluate((cell) => {
        window.columnwiseBench?.bench.select('Class', cell)
      }, address)
    await select('A3')
    await button(stage, 'Write across').click()
    await stage.pane.getByText('Cell A3 on Class is not empty. Write over it?').waitFor()
    const asking = stage.pane.locator('.write-over')
    expect(await asking.evaluate((box) => box === document.activeElement)).toBe(true)
    await asking.getByText(`A3: “${NAMES[1]}”`).waitFor()
    await button(stage, 'Leave them').click()
    expect((await cells(stage, 5, 1)).flat()).toEqual(['Name', ...NAMES])
    await select('B1')
    await button(stage, 'Write across').click()
    await stage.pane.getByText('The questions are on the sheet Class.').waitFor()
    expect((await cells(stage, 1, 11))[0]).toEqual(['Name', ...(await drawn(stage))])
    expectQuiet(stage)
    await stage.page.close()
  })

  it('is used with the keyboard alone', async () => {
    const stage = await openSet()
    await stage.pane.getByRole('tab', { name: 'Set' }).focus()
    await tabTo(stage, button(stage, 'Lay out a marksheet'))
    await stage.page.keyboard.press('Enter')
    await stage.pane.getByText(/^The marksheet is on the sheet Subtraction \d+ \w{3}\./).waitFor()
    await stage.page.close()
  })

  it.each<[string, Setting]>([
    ['light', { width: 320 }],
    ['dark', { width: 320, dark: true }],
    ['high contrast', { width: 320, forcedColours: true }],
  ])('fits 320 pixels and passes axe: %s', async (_, setting) => {
    const stage = await openSet(setting)
    await choice(stage, 'Numbers').selectOption({ label: 'My own choice of numbers' })
    const { page, pane } = stage
    await page.evaluate(() => {
      window.columnwiseBench?.bench.select('Class', 'A1')
    })
    await button(stage, 'Write down').click()
    await pane.getByText(/are not empty/).waitFor()
    expect(await axeProblems(pane)).toEqual([])
    expect(await pane.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320)
    expect(await pane.locator('main').evaluate((main) => main.scrollWidth - main.clientWidth)).toBe(0)
    expectQuiet(stage)
    await page.close()
  })
})
