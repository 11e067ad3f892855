import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { openLargeWindow } from '../../../taskpane/common/largeWindow'
import { problemIn } from '../../office/host'

/** How long a window of the host takes to close, in milliseconds. */
const CLOSING = 150

/** A host with one window at a time that takes its time to close, as the Dialog API does; `code` is an error with which it always answers. */
function hostOfWindows(code?: number) {
  const shown: string[] = []
  let isOpen = false
  const dialog = {
    close: () => {
      setTimeout(() => {
        isOpen = false
      }, CLOSING)
    },
    addEventHandler: () => undefined,
  }
  const displayDialogAsync = (address: string, _: object, tell: (result: object) => void) => {
    const refused = code ?? (isOpen ? 12007 : undefined)
    if (refused !== undefined) {
      tell({ status: 'failed', error: { code: refused } })
      return
    }
    isOpen = true
    shown.push(address)
    tell({ status: 'succeeded', value: dialog })
  }
  vi.stubGlobal('Office', {
    AsyncResultStatus: { Succeeded: 'succeeded' },
    EventType: {},
    context: { requirements: { isSetSupported: () => true }, ui: { displayDialogAsync } },
  })
  return shown
}

const page = (address: string) => ({ address, mustTalk: false, hear: () => undefined })

const openOfBrowser = vi.fn(() => null)

beforeEach(() => {
  openOfBrowser.mockClear()
  vi.stubGlobal('window', { open: openOfBrowser })
})
afterEach(() => {
  vi.unstubAllGlobals()
})

/** A host without a Dialog API, as Excel 2016 would be. */
function hostWithout() {
  vi.stubGlobal('Office', { context: { requirements: { isSetSupported: () => false }, ui: {} } })
}

describe('the large window', () => {
  it('opens a second time while the first is still closing, and never as a window of the browser', async () => {
    const shown = hostOfWindows()
    await openLargeWindow(page('one'))
    await openLargeWindow(page('two'))
    expect(shown).toEqual(['one', 'two'])
    expect(openOfBrowser).not.toHaveBeenCalled()
  })

  it.each([12002, 12003, 12004, 12005, 12007, 13000])(
    'is never a window of the browser where Excel has windows, but a sentence, when Excel answers with %i',
    async (code) => {
      hostOfWindows(code)
      const { sentence, next } = await problemIn(openLargeWindow(page('one')))
      expect(sentence).toBe(
        code === 12007
          ? 'Another large window of Columnwise is still open.'
          : 'Excel did not open the large window.',
      )
      expect(next).not.toBe('')
      expect(openOfBrowser).not.toHaveBeenCalled()
    },
  )

  it('is one of the browser only where Excel has none', async () => {
    hostWithout()
    await problemIn(openLargeWindow(page('one')))
    expect(openOfBrowser).toHaveBeenCalledOnce()
  })

  it('says so where the browser keeps windows from opening', async () => {
    hostOfWindows(12011)
    const { sentence, next } = await problemIn(openLargeWindow(page('one')))
    expect(sentence).toBe('The browser keeps the large window from opening.')
    expect(next).toMatch(/Allow pop-up windows/)
    expect(openOfBrowser).not.toHaveBeenCalled()
  })
})
