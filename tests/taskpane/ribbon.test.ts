import { beforeAll, describe, expect, it } from 'vitest'
import { readFileSync } from 'node:fs'
import type { Bench } from '../../src/bench/bench'
import { startBench } from '../../src/bench/node'
import { RUNNER } from '../../taskpane/common/pane'
import { connectRibbon } from '../../taskpane/ribbon'
import { benchOf, benchWith } from '../office/host'

type Command = (event: { completed(): void }) => void

/** Presses the ribbon's button as Excel does, and resolves when the add-in says that it is done. */
async function press(name: string, over: () => void = () => undefined): Promise<void> {
  const { mappings } = (Office.actions as unknown as { _association: { mappings: Record<string, Command> } })
    ._association
  // The client library knows functions by their names in capitals.
  const command = mappings[name.toUpperCase()]
  if (!command) throw new Error(`Nothing is associated with ${name}.`)
  await new Promise<void>((resolve) => {
    command({
      completed: () => {
        over()
        resolve()
      },
    })
  })
}

const rulesOn = ({ grid }: Bench) => grid.conditionalFormats(grid.activeSheet()).length
const notice = () => RUNNER.state().notice

/** A press before the pane's script is there. */
let early: Promise<void>

beforeAll(async () => {
  const bench = await startBench()
  bench.grid.renameSheet(bench.grid.activeSheet(), 'Early')
  await import('../../taskpane/commands')
  early = press('markThisSheet')
  connectRibbon()
})

describe('Mark this sheet, on the ribbon', () => {
  it('acts on a press that was made before the pane was there', async () => {
    await early
    expect(notice()?.sentence).toBe('Early is not marked yet.')
  })

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

  it('marks while the pane, just opened, looks at the sheet itself', async () => {
    const bench = await benchOf('kestrel-plain')
    const { sharedMarker } = await import('../../taskpane/mark/marker')
    let looks: Promise<void> | undefined
    const end = RUNNER.subscribe(() => {
      if (RUNNER.state().running) looks ??= sharedMarker().look()
    })
    await press('markThisSheet')
    end()
    await looks
    expect(rulesOn(bench)).toBeGreaterThan(0)
    await RUNNER.undo()
  })

  it('opens the pane where there is no marksheet, and says so', async () => {
    const bench = await benchWith({ name: 'Diary', values: [['Monday', 'Assembly']] })
    await press('markThisSheet')
    await expect.poll(() => bench.runtime.getAppRuntimeState()).toBe('Visible')
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
    await expect.poll(() => bench.runtime.getAppRuntimeState()).toBe('Visible')
  })

  it('opens the pane where the sheet is protected, with the reason', async () => {
    const bench = await benchOf('kestrel-plain')
    bench.book.sheet(bench.grid.activeSheet()).protection = { options: {} }
    await press('markThisSheet')
    expect(notice()?.sentence).toMatch(/is protected/)
    await expect.poll(() => bench.runtime.getAppRuntimeState()).toBe('Visible')
  })

  it('opens the pane only after the press is over, which Excel waits for', async () => {
    const bench = await benchWith({ name: 'Diary', values: [['Monday', 'Assembly']] })
    await press('markThisSheet', () => {
      expect(bench.runtime.getAppRuntimeState()).toBe('Background')
    })
    await expect.poll(() => bench.runtime.getAppRuntimeState()).toBe('Visible')
  })
})
