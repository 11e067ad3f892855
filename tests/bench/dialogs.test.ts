import { beforeAll, describe, expect, it, vi } from 'vitest'
import { startBench } from '../../src/bench/node'
import { openLargeWindow } from '../../taskpane/common/largeWindow'

/** A window of the browser that notes what is sent to it. */
function windowOf(address: string) {
  const got: unknown[] = []
  const page = {
    address,
    got,
    closed: false,
    close: () => {
      page.closed = true
    },
    dispatchEvent: ({ data }: MessageEvent) => got.push(data),
  }
  return page
}

const opened: ReturnType<typeof windowOf>[] = []
let hear: (event: object) => void = () => undefined

beforeAll(async () => {
  vi.stubGlobal('open', (address: string) => {
    opened.push(windowOf(address))
    return opened.at(-1)
  })
  await startBench()
  vi.stubGlobal('addEventListener', (_: string, listener: (event: object) => void) => {
    hear = listener
  })
})

describe('the bench’s dialogs, through the client library', () => {
  it('hand on what the page says, and what it is answered', async () => {
    const heard: string[] = []
    await openLargeWindow({
      address: 'http://localhost/handout.html',
      mustTalk: true,
      hear: (message, answer) => {
        heard.push(message)
        answer('the hand-out')
      },
    })
    const [page] = opened
    hear({ source: page, origin: 'http://localhost', data: 'ready' })
    await expect.poll(() => page?.got).toEqual(['the hand-out'])
    expect(heard).toEqual(['ready'])
  })

  it('are one at a time, and take their time to close', async () => {
    await openLargeWindow({
      address: 'http://localhost/projector.html',
      mustTalk: false,
      hear: () => undefined,
    })
    expect(opened.map(({ closed }) => closed)).toEqual([true, false])
  })
})
