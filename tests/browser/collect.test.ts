import { describe, expect, it } from 'vitest'
import { DEMO } from '../../src/bench/demo'
import { returnedBy, workbookOf } from '../home/collect/returned'
import { expectQuiet, openStage, useStage } from './stage'

useStage()

const [, , head = [], ...pupils] = DEMO.cells
const ROOM = { names: pupils.map(([name]) => String(name)), questions: head.slice(1).map(String) }
const xlsx = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'

describe('Collect answers', () => {
  it('reads the files in the browser, shows whose they are, writes and marks, and Undo takes it back', async () => {
    const stage = await openStage({ width: 320 })
    const { pane, page } = stage
    const cell = () =>
      page.evaluate(() => {
        const bench = window.columnwiseBench?.bench
        return bench?.grid.values(bench.sheetId('Kingfisher'), { row: 4, col: 12, rows: 1, cols: 1 })[0]?.[0]
      })
    await pane.getByRole('button', { name: 'Collect answers' }).click()
    const answers = ROOM.questions.map((_, at) => (at === 11 ? 5001 : null))
    const buffer = Buffer.from(await workbookOf(returnedBy(ROOM, 'Bertie L', { answers })))
    await pane
      .getByLabel('Files that came back')
      .setInputFiles([{ name: 'bertie.xlsx', mimeType: xlsx, buffer }])
    await pane.getByRole('heading', { name: '1 answer to write' }).waitFor()
    expect(await pane.getByText('→ 5001').isVisible()).toBe(true)
    expect(await cell()).toBe('')
    await pane.getByRole('button', { name: 'Write and mark' }).click()
    await pane.getByText('Kingfisher is marked.').waitFor()
    await pane.getByText('Of 336 answers:').waitFor()
    expect(await cell()).toBe(5001)
    await pane.getByRole('button', { name: 'Undo marking of Kingfisher' }).click()
    await pane.getByRole('button', { name: 'Undo collected answers on Kingfisher' }).click()
    await expect.poll(cell).toBe('')
    expectQuiet(stage)
    await page.close()
  })

  it('takes a message by keyboard alone, the child confirmed', async () => {
    const stage = await openStage({ width: 320 })
    const { pane, page } = stage
    await pane.getByRole('button', { name: 'Collect answers' }).press('Enter')
    await pane.getByRole('tab', { name: 'Files' }).press('ArrowRight')
    await pane.getByLabel('What the message says').fill('12) 5001\nLove Bertie')
    await pane.getByRole('button', { name: 'Bertie L' }).press('Enter')
    await pane.getByRole('button', { name: 'Find the answers' }).press('Enter')
    await pane.getByRole('heading', { name: '1 answer to write' }).waitFor()
    await pane.getByRole('button', { name: 'Write only' }).press('Enter')
    await pane.getByText('1 answer of one child went into Kingfisher.').waitFor()
    expectQuiet(stage)
    await page.close()
  })
})
