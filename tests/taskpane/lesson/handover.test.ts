import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Handout } from '../../../src/lesson/handout'
import { askForHandout } from '../../../taskpane/lesson/handover'

const ORIGIN = 'https://school.example'

/** A window that the pane of `opener` has opened, without Excel; gives what delivers a message to it. */
function windowOf(opener: object): (data: unknown) => void {
  let listener: (event: object) => void = () => undefined
  vi.stubGlobal('location', { origin: ORIGIN })
  vi.stubGlobal('window', {
    opener,
    addEventListener: (_: string, added: (event: object) => void) => {
      listener = added
    },
  })
  vi.stubGlobal('Office', { HostType: { Excel: 'Excel' }, onReady: () => Promise.resolve({ host: null }) })
  return (data) => {
    listener({ source: opener, origin: ORIGIN, data })
  }
}

afterEach(() => {
  vi.unstubAllGlobals()
})

describe('the window of a hand-out', () => {
  it('asks its pane for one, and shows nothing but hand-outs', () => {
    const asked: unknown[] = []
    const deliver = windowOf({ postMessage: (message: string) => asked.push(message) })
    const shown: Handout[] = []
    askForHandout((handout) => shown.push(handout))
    expect(asked).toEqual(['ready'])
    for (const other of ['', 'ready', 'null', '7', '{}', '[]', '{"sheets":7}', '{"title":"A lesson"}', {}])
      deliver(other)
    expect(shown).toEqual([])
    const handout: Handout = { title: 'A lesson', set: '', sheets: [] }
    deliver(JSON.stringify(handout))
    expect(shown).toEqual([handout])
  })
})
