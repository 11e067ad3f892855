import { describe, expect, it } from 'vitest'
import { cellsEdit } from '../../../src/office/edit/cells'
import { perform } from '../../../src/office/edit/edit'
import { Problem } from '../../../src/office/edit/errors'
import { stopIfAsked } from '../../../src/office/edit/work'
import { Runner } from '../../../taskpane/common/runner'
import { benchWith } from '../../office/host'

/** A bench with one cell and a function that writes it. */
async function withCell() {
  const bench = await benchWith({ name: 'S', values: [['old']] })
  const id = bench.grid.activeSheet()
  const write = (text: string) =>
    perform(`writing ${text}`, [cellsEdit({ id, name: 'S' }, [{ top: 0, left: 0, rows: [[text]] }])])
  const value = () => bench.grid.values(id, { row: 0, col: 0, rows: 1, cols: 1 })[0]?.[0]
  return { bench, write, value }
}

describe('the runner', () => {
  it('carries out one action at a time and gives what it gives', async () => {
    const runner = new Runner()
    let finish: (value: number) => void = () => undefined
    const first = runner.run('First', () => new Promise<number>((resolve) => (finish = resolve)))
    expect(runner.state().running?.title).toBe('First')
    expect(await runner.run('Second', () => Promise.resolve(2))).toBeUndefined()
    let idle = false
    const waiting = runner.idle().then(() => (idle = true))
    expect(idle).toBe(false)
    finish(1)
    expect(await first).toBe(1)
    await waiting
    expect(runner.state().running).toBeNull()
  })

  it('tells progress, and stops when asked', async () => {
    const runner = new Runner()
    const seen: unknown[] = []
    runner.subscribe(() => seen.push(runner.state().running?.part))
    await runner.run('Long', async (work) => {
      work.progress(0.5, 'Half')
      runner.stop()
      await Promise.resolve()
      stopIfAsked(work)
    })
    expect(seen).toContain(0.5)
    expect(runner.state().notice).toEqual({
      kind: 'done',
      sentence: 'Stopped, and nothing was changed.',
      next: '',
    })
  })

  it('starts afresh after a stop', async () => {
    const runner = new Runner()
    runner.stop()
    expect(await runner.run('Next', (work) => Promise.resolve(work.signal.aborted))).toBe(false)
  })

  it('turns an error into a sentence with a next step, and the next action takes it away', async () => {
    const runner = new Runner()
    await runner.run('Fails', () => Promise.reject(new Problem('It is so.', 'Do this.')))
    expect(runner.state().notice).toEqual({ kind: 'problem', sentence: 'It is so.', next: 'Do this.' })
    await runner.run('Works', () => Promise.resolve())
    expect(runner.state().notice).toBeNull()
  })
})

describe('Undo', () => {
  it('takes back one write after another, the last first', async () => {
    const { write, value } = await withCell()
    const runner = new Runner()
    runner.wrote(await write('one'))
    runner.wrote(await write('two'))
    expect(runner.state().undo?.title).toBe('writing two')
    await runner.undo()
    expect(value()).toBe('one')
    expect(runner.state().undo?.title).toBe('writing one')
    await runner.undo()
    expect(value()).toBe('old')
    expect(runner.state().undo).toBeNull()
    expect(runner.state().notice?.sentence).toBe('Undone: writing one.')
  })

  it('says what was left out in writing, once', () => {
    const runner = new Runner()
    runner.wrote({ title: 'marking', edits: [], told: ['Notes were left out.'] })
    runner.say('Heron is marked.')
    expect(runner.state().notice?.sentence).toBe('Heron is marked. Notes were left out.')
    runner.say('Kestrel is marked.')
    expect(runner.state().notice?.sentence).toBe('Kestrel is marked.')
  })

  it('tells what was taken back', async () => {
    const { write } = await withCell()
    const runner = new Runner()
    const told: string[] = []
    const end = runner.whenUndone(({ title }) => told.push(title))
    runner.wrote(await write('one'))
    runner.wrote(await write('two'))
    await runner.undo()
    end()
    await runner.undo()
    expect(told).toEqual(['writing two'])
  })

  it('stays possible where it failed', async () => {
    const { bench, write, value } = await withCell()
    const runner = new Runner()
    runner.wrote(await write('one'))
    bench.host.editing = true
    await runner.undo()
    expect(runner.state().notice?.kind).toBe('problem')
    bench.host.editing = false
    await runner.undo()
    expect(value()).toBe('old')
  })

  it('counts what goes on from the last write as one', async () => {
    const { write } = await withCell()
    const runner = new Runner()
    const first = await write('one')
    const second = await write('two')
    runner.wrote(first)
    runner.wrote(second, first)
    expect(runner.keeps(first)).toBe(false)
    expect(runner.keeps(second)).toBe(true)
    await runner.undo()
    expect(runner.state().undo).toBeNull()
  })
})

describe('a look at the workbook', () => {
  it('waits until nothing else is under way, and leaves what was said', async () => {
    const runner = new Runner()
    const order: string[] = []
    const action = runner.run('Writing', async () => {
      await Promise.resolve()
      order.push('written')
      runner.say('It is written.')
    })
    const looks = ['first', 'second'].map((look) =>
      runner.look('Looking', async () => {
        await Promise.resolve()
        order.push(look)
        return look
      }),
    )
    await action
    expect(await Promise.all(looks)).toEqual(['first', 'second'])
    expect(order).toEqual(['written', 'first', 'second'])
    expect(runner.state().notice?.sentence).toBe('It is written.')
  })
})
