import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { readFileSync } from 'node:fs'
import type { Bench } from '../../src/bench/bench'
import { startBench } from '../../src/bench/node'
import { RUNNER } from '../../taskpane/common/pane'
import { connectRibbon } from '../../taskpane/ribbon'
import { benchOf, benchWith } from '../office/host'

type Command = (event: { completed(): void }) => void

/** Presses the ribbon's button as Excel does, and resolves when the add-in says that it is done. */
async function press(name: string): Promise<void> {
  const { mappings } = (Office.actions as unknown as { _association: { mappings: Record<string, Command> } })
    ._association
  // The client library knows functions by their names in capitals.
  const command = mappings[name.toUpperCase()]
  if (!command) throw new Error(`Nothing is associated with ${name}.`)
  await new Promise<void>((completed) => {
    command({ completed })
  })
}

const rulesOn = ({ grid }: Bench) => grid.conditionalFormats(grid.activeSheet()).length
const notice = () => RUNNER.state().notice

beforeAll(async () => {
  await startBench()
  connectRibbon()
})

beforeEach(() => {
  RUNNER.hush()
})

describe('Mark this sheet, on the ribbon', () => {
  it('is the function that the manifest names', async () => {
    const bench = await benchOf('heron-notes')
    const [, named = ''] =
      /<FunctionName>(.*)<\/FunctionName>/.exec(readFileSync('manifest.xml', 'utf8')) ?? []
    await press(named)
    expect(rulesOn(bench)).toBeGreaterThan(0)
  })

  it('marks the one marksheet on the sheet in front without the pane, and Undo in the pane takes it back', async () => {
    const bench = await benchOf('kestrel-plain')
    await press('markThisSheet')
    expect(rulesOn(bench)).toBeGreaterThan(0)
    expect(bench.runtime.getAppRuntimeState()).toBe('Background')
    expect(notice()?.kind).toBe('done')
    await RUNNER.undo()
    expect(rulesOn(bench)).toBe(0)
  })

  it('opens the pane where there is no marksheet, and says so', async () => {
    const bench = await benchWith({ name: 'Diary', values: [['Monday', 'Assembly']] })
    await press('markThisSheet')
    expect(bench.runtime.getAppRuntimeState()).toBe('Visible')
    expect(notice()?.sentence).toBe('Diary is not marked yet.')
  })

  it('opens the pane where there are two marksheets, and marks neither', async () => {
    const sheet = (first: string) => [
      ['Name', '932 − 457', '305 − 128', '52 − 17'],
      [first, 475, 177, 35],
      ['Wren F', 475, 277, 35],
      ['Lark M', 525, 177, 45],
    ]
    const values = [...sheet('Robin A'), [], [], [], [], ...sheet('Finch D')]
    const bench = await benchWith({ name: 'Two', values })
    await press('markThisSheet')
    expect(rulesOn(bench)).toBe(0)
    expect(bench.runtime.getAppRuntimeState()).toBe('Visible')
  })

  it('opens the pane where the sheet is protected, with the reason', async () => {
    const bench = await benchOf('kestrel-plain')
    bench.book.sheet(bench.grid.activeSheet()).protection = { options: {} }
    await press('markThisSheet')
    expect(notice()?.sentence).toMatch(/is protected/)
    expect(bench.runtime.getAppRuntimeState()).toBe('Visible')
  })
})
