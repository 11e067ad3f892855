import { beforeAll, describe, test } from 'vitest'
import type { Bench } from '../../src/bench/bench'
import { CONTRACT } from '../../src/bench/contract'
import { startBench } from '../../src/bench/node'
import { headlessUniver } from './headless'

const grids = [
  { grid: 'in memory', start: () => startBench() },
  { grid: 'Univer, headless', start: () => startBench({ grid: headlessUniver() }) },
]

// The host contract, check by check; the page's own test runs the same list in a browser.
describe.each(grids)('the host contract on the grid $grid', ({ start }) => {
  let bench: Bench | undefined
  beforeAll(async () => {
    bench = await start()
  })
  test.each(CONTRACT)('$name', async ({ run }) => {
    await run()
    const missing = [...(bench?.host.unsupported.keys() ?? [])]
    if (missing.length > 0) throw new Error(`The bench lacks ${missing.join(', ')}`)
  })
})
