import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import * as XLSX from 'xlsx'
import { LOOKS } from '../../src/marksheet/marking/looks'
import { addressOf, type Area } from '../../src/marksheet/layout/matrix'
import { review } from '../../src/marksheet/marking/review'
import { lookOf } from '../../src/marksheet/marking/rules'
import { bytesOf } from '../bench/browser'
import { LIBREOFFICE, shownFills } from '../files/libreoffice'
import { matricesOf } from '../marksheets'
import { answerKey } from '../../src/answers/typed'
import { readQuestion } from '../../src/arithmetic/question'
import { addressArea } from '../../src/office/edit/address'
import {
  axeProblems,
  colourAt,
  expectQuiet,
  openStage,
  pixelsOf,
  tabTo,
  useStage,
  valueAt,
  type Stage,
} from './stage'

/** What the scripts may weigh that the pane loads at its start, gzipped, without Microsoft's client library. */
const START_LIMIT = 200_000
/** The row of the demo class that holds its questions, from 0. */
const QUESTIONS = 2
/** A cell with an answer in the grid of the demo class, and a place in it where nothing is written; in pixels of the grid. */
const ANSWER = { x: 260, y: 130 }
const BESIDE = { x: 205, y: 130 }
/** Fewer pixels than a cell has, and more than the frame of the selection hides. */
const CELL = 700

useStage()

const button = ({ pane }: Stage, name: string | RegExp) => pane.getByRole('button', { name })

async function mark(stage: Stage): Promise<void> {
  await button(stage, 'Mark this sheet').click()
  await stage.pane.getByText('Kingfisher is marked.').waitFor()
}

/** Waits until the number of pixels that show a look passes a test and has come to rest; gives it. */
async function untilPixels({ page }: Stage, look: keyof typeof LOOKS, passes: (count: number) => boolean) {
  let [before, count] = [-1, -1]
  const isAtRest = async () => {
    before = count
    count = await pixelsOf(page, LOOKS[look].fill)
    return passes(count) && count === before
  }
  await expect.poll(isAtRest, { timeout: 20_000, interval: 300 }).toBe(true)
  return count
}

describe('the pane at its start', () => {
  it('loads at most 200 kB of scripts gzipped, without the client library', async () => {
    const { scripts, page } = await openStage()
    const own = [...scripts].filter(([url]) => !new URL(url).pathname.startsWith('/office/'))
    const sizes = await Promise.all(own.map(async ([, body]) => gzipSync(await body).length))
    expect(own.some(([url]) => url.endsWith('/taskpane.js'))).toBe(true)
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThanOrEqual(START_LIMIT)
    await page.close()
  })

  it('shows what it found before it does anything', async () => {
    const stage = await openStage({ workbook: 'heron-notes.xlsx' })
    await stage.pane.getByText('26 pupils, 10 questions, 248 of 260 answers entered.').waitFor()
    await button(stage, 'Names: show A6:B31 in the sheet').waitFor()
    expect(await pixelsOf(stage.page, LOOKS.right.fill)).toBe(0)
    expectQuiet(stage)
    await stage.page.close()
  })
})

describe('marking on the bench', () => {
  it('colours the sheet, recolours a retyped answer, is cleared, and comes back by Undo', async () => {
    const stage = await openStage()
    const { page } = stage
    await mark(stage)
    const right = await untilPixels(stage, 'right', (count) => count > 5_000)
    await untilPixels(stage, 'wrong', (count) => count > 1_000)
    await page.locator('#univer-sheet-main-canvas_bench').click({ position: ANSWER })
    const { col } = await page.evaluate(
      () => window.columnwiseBench?.bench.grid.selection().area ?? { col: 0 },
    )
    const reading = readQuestion(String(await valueAt(page, QUESTIONS, col)))
    if ('problem' in reading) throw new Error('There is no question above the cell.')
    await page.keyboard.type('1')
    await page.keyboard.press('Enter')
    await expect.poll(() => colourAt(page, BESIDE), { timeout: 20_000 }).toBe(LOOKS.wrong.fill)
    await page.keyboard.press('ArrowUp')
    await page.keyboard.type(answerKey(reading.question).value)
    await page.keyboard.press('Enter')
    await expect.poll(() => colourAt(page, BESIDE), { timeout: 20_000 }).toBe(LOOKS.right.fill)
    await button(stage, 'Clear marks').click()
    await untilPixels(stage, 'right', (count) => count === 0)
    await button(stage, 'Undo clearing of Kingfisher').click()
    await untilPixels(stage, 'right', (count) => count >= right - CELL)
    await button(stage, 'Undo marking of Kingfisher').click()
    await untilPixels(stage, 'right', (count) => count === 0)
    await stage.pane.getByText(/^Undone:/).waitFor()
    expectQuiet(stage)
    await page.close()
  })

  it('says what a pupil needs, in a line with its evidence, and goes to the name', async () => {
    const stage = await openStage()
    await mark(stage)
    const reason = button(stage, /^Bertie L takes the smaller digit/)
    await reason.click()
    await expect
      .poll(() =>
        stage.page.evaluate(() => {
          const { area } = window.columnwiseBench?.bench.grid.selection() ?? {}
          return area && [area.row, area.rows]
        }),
      )
      .toEqual([4, 1])
    expect(await axeProblems(stage.pane)).toEqual([])
    await button(stage, 'Flags on names')
      .or(stage.pane.getByRole('switch', { name: 'Flags on names' }))
      .first()
      .click()
    await expect.poll(() => reason.count()).toBe(0)
    expectQuiet(stage)
    await stage.page.close()
  })

  it('goes to the cell of an answer that it could not read', async () => {
    const stage = await openStage()
    await mark(stage)
    await button(stage, /Imogen T: 605 − 347/).click()
    await expect
      .poll(() => stage.page.evaluate(() => window.columnwiseBench?.bench.grid.selection().area))
      .toMatchObject({ row: 11, col: 6 })
    await stage.page.close()
  })

  it('hides names in the sheet and in the pane by one click', async () => {
    const stage = await openStage()
    await mark(stage)
    await untilPixels(stage, 'flag', (count) => count > 500)
    await stage.pane.getByRole('switch', { name: 'Flags on names' }).click()
    await untilPixels(stage, 'flag', (count) => count === 0)
    await stage.pane.getByText('Names are hidden here').waitFor()
    expect(await stage.pane.getByText('Bertie L').count()).toBe(0)
    await stage.page.close()
  })

  it('says so on a sheet without a marksheet, and takes the teacher’s own ranges', async () => {
    const stage = await openStage()
    const { page, pane } = stage
    await page.evaluate(() => {
      const grid = window.columnwiseBench?.bench.grid
      const id = grid?.addSheet('By hand')
      if (!grid || id === undefined) return
      grid.write(id, 0, 1, [['The sum is 932 − 457 today'], [475], [525]])
      grid.write(id, 1, 0, [['7'], ['8']])
      grid.write(id, 0, 1, [['932 − 457']])
      grid.activateSheet(id)
      grid.flush()
    })
    await button(stage, 'Look again').click()
    await pane.getByRole('heading', { name: 'By hand' }).waitFor()
    for (const [part, address] of [
      ['Names', 'A2:A3'],
      ['Questions', 'B1'],
      ['Answers', 'B2:B3'],
    ] as const) {
      await page.evaluate((to) => {
        window.columnwiseBench?.bench.select('By hand', to)
      }, address)
      await button(stage, `${part}: use my selection`).click()
      await button(stage, new RegExp(`${part}: show`)).waitFor()
    }
    await pane.getByText('2 pupils, 1 question, 2 of 2 answers entered.').waitFor()
    await button(stage, 'Mark this sheet').click()
    await pane.getByText('By hand is marked.').waitFor()
    expectQuiet(stage)
    await page.close()
  })

  it('saves what it wrote: an independent reader finds the Mastery sheet as text', async () => {
    const stage = await openStage()
    await mark(stage)
    const [download] = await Promise.all([
      stage.page.waitForEvent('download'),
      stage.page.locator('#save-file').click(),
    ])
    const book = XLSX.read(await bytesOf(download))
    expect(book.SheetNames).toContain('Mastery')
    const rows = XLSX.utils.sheet_to_json<string[]>(book.Sheets.Mastery ?? {}, { header: 1 })
    expect(rows[0]?.[0]).toBe('Columnwise · Mastery')
    expect(rows.flat().some((text) => /^○ \d of \d · needs support$/.test(text))).toBe(true)
    expectQuiet(stage)
    await stage.page.close()
  })

  it.skipIf(LIBREOFFICE === null)('saves colours that LibreOffice shows as the review has them', async () => {
    const stage = await openStage()
    await mark(stage)
    const [download] = await Promise.all([
      stage.page.waitForEvent('download'),
      stage.page.locator('#save-file').click(),
    ])
    const saved = new Uint8Array(await bytesOf(download))
    const fills = await shownFills(saved)
    const [matrix] = await matricesOf(saved)
    const [found] = review(matrix ?? { name: '', values: [] })
    const wanted = (found?.pupils ?? []).flatMap(({ answers, outcomes }) =>
      answers.map(({ row, column }, index) => {
        const look = lookOf(outcomes[index] ?? 'blank')
        return {
          cell: addressOf({ row, column }),
          fill: look && LOOKS[look].fill,
          shown: fills[row]?.[column] ?? null,
        }
      }),
    )
    expect(wanted.length).toBe(28 * 12)
    expect(wanted.filter(({ fill, shown }) => fill !== shown)).toEqual([])
    await stage.page.close()
  })
})

describe('quick entry', () => {
  it('enters answers by the keyboard alone, and Undo takes all of them back', async () => {
    const stage = await openStage()
    const { page, pane } = stage
    await button(stage, 'Quick entry').focus()
    await page.keyboard.press('Enter')
    const start = button(stage, /^Start, \d+ answers/)
    await start.waitFor()
    await tabTo(stage, start)
    await page.keyboard.press('Enter')
    const field = pane.getByRole('textbox')
    await field.waitFor()
    const places: Area[] = []
    for (const keys of [['Enter'], ['1', '2', 'Enter'], ['a'], ['Space']]) {
      const label = (await pane.locator('label', { hasText: 'Answer in' }).textContent()) ?? ''
      places.push(addressArea(label.replace('Answer in ', '')))
      for (const key of keys) await page.keyboard.press(key)
      await pane.getByText(`Answer ${places.length + 1} of`).waitFor()
    }
    const recent = pane.getByRole('list', { name: 'Entered last' })
    await expect.poll(() => recent.textContent()).toMatch(/blank.*absent.*wrong/)
    const held = () => Promise.all(places.map(({ top, left }) => valueAt(page, top, left)))
    const [right, ...others] = await held()
    const reading = readQuestion(String(await valueAt(page, QUESTIONS, places[0]?.left ?? 0)))
    expect('question' in reading && answerKey(reading.question).value).toBe(String(right))
    expect(others).toEqual([12, 'abs', '-'])
    await page.keyboard.press('ArrowUp')
    await pane.getByText('Answer 4 of').waitFor()
    await page.keyboard.press('Escape')
    await button(stage, 'Mark this sheet').waitFor()
    await tabTo(stage, button(stage, 'Undo quick entry on Kingfisher'))
    await page.keyboard.press('Enter')
    await pane.getByText(/^Undone:/).waitFor()
    expect(await held()).toEqual(['', '', '', ''])
    expectQuiet(stage)
    await page.close()
  })
})

describe('everyone can use the pane', () => {
  it('all of Mark can be reached and run by the keyboard', async () => {
    const stage = await openStage()
    await stage.pane.getByRole('tab', { name: 'Mark' }).focus()
    await tabTo(stage, button(stage, 'Mark this sheet'))
    await stage.page.keyboard.press('Enter')
    await stage.pane.getByText('Kingfisher is marked.').waitFor()
    await tabTo(stage, button(stage, 'Undo marking of Kingfisher'))
    await stage.page.keyboard.press('Space')
    await stage.pane.getByText(/^Undone:/).waitFor()
    await untilPixels(stage, 'right', (count) => count === 0)
    await stage.page.close()
  })
})
