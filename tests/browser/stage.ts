import axe from 'axe-core'
import type { Browser, Frame, Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject } from 'vitest'
import type {} from '../../src/bench/page/bench'
import { connectBrowser, watch, type Watch } from '../bench/browser'
import { pathOf } from '../marksheets'

let browser: Browser | undefined

/** Connects to the run's Chromium before the tests of a file, and closes its pages after them. */
export function useStage(): void {
  beforeAll(async () => {
    browser = await connectBrowser(inject('chromium'))
  })
  afterAll(() => browser?.close())
}

/** How the pane is shown. */
export interface Setting {
  readonly dark?: boolean
  readonly forcedColours?: boolean
  /** The pane's width in pixels; the least that Excel gives it is 320. */
  readonly width?: number
  /** The pane's height in pixels. */
  readonly height?: number
  /** Whether Excel tells its theme: what `toldTheme` of the pane's window holds. */
  readonly tellsTheme?: boolean
  /** How long the pane's own script takes to come, in milliseconds. */
  readonly scriptDelay?: number
  /** A button of the ribbon that is pressed as soon as the page is there; `firstPress` of the window says what came of it. */
  readonly press?: string
  /** A workbook of tests/marksheets to open, in place of the demo class. */
  readonly workbook?: string
}

/** The bench with the pane in it. */
export interface Stage {
  readonly page: Page
  readonly pane: Frame
  readonly watched: Watch
  /** Scripts that the pane has asked for so far, by address, with their bodies. */
  readonly scripts: ReadonlyMap<string, Promise<Buffer>>
}

/** Opens the bench page and waits until the pane has looked at the sheet. */
export async function openStage(setting: Setting = {}): Promise<Stage> {
  if (!browser) throw new Error('useStage() has not been called.')
  const page = await browser.newPage({
    viewport: { width: 1400, height: 850 },
    colorScheme: setting.dark ? 'dark' : 'light',
    forcedColors: setting.forcedColours ? 'active' : 'none',
    reducedMotion: 'reduce',
  })
  const scripts = new Map<string, Promise<Buffer>>()
  page.on('response', (response) => {
    if (response.request().resourceType() === 'script' && response.frame() !== page.mainFrame())
      scripts.set(response.url(), response.body())
  })
  const watched = watch(page)
  if (setting.tellsTheme) await page.addInitScript(tellTheme)
  const { scriptDelay, press } = setting
  if (scriptDelay !== undefined)
    await page.route('**/taskpane.js', async (route) => {
      await new Promise((resolve) => setTimeout(resolve, scriptDelay))
      await route.continue()
    })
  await page.goto(inject('bench'))
  if (press !== undefined) {
    await page.waitForFunction(() => window.columnwiseBench)
    await page.evaluate((name) => {
      window.firstPress = window.columnwiseBench?.press(name)
    }, press)
  }
  await page.waitForFunction(() => window.columnwiseBench?.functionsConnected)
  if (setting.workbook !== undefined) {
    await page.setInputFiles('#open-file', pathOf(setting.workbook))
    await expect.poll(() => page.locator('#status').textContent()).toBe('Opened.')
  }
  await page.locator('#pane iframe').evaluate(({ style }, { width, height }) => {
    if (width !== undefined) style.width = `${width}px`
    if (height !== undefined) style.height = `${height}px`
  }, setting)
  return { page, pane: await paneOf(page), watched, scripts }
}

declare global {
  interface Window {
    firstPress?: Promise<boolean> | undefined
    toldTheme?: Partial<Office.OfficeTheme>
  }
}

/** Has the client library give what `toldTheme` holds for Excel's theme, and throw where it holds nothing. Runs on the page. */
function tellTheme(): void {
  const define = Object.defineProperty.bind(Object)
  const get = () => {
    if (!window.toldTheme) throw new Error('No theme is told.')
    return window.toldTheme
  }
  Object.defineProperty = (target, name, how) =>
    define(target, name, name === 'officeTheme' ? { get, enumerable: true } : how)
}

/** The pane's frame, once it has looked at the sheet. */
export async function paneOf(page: Page): Promise<Frame> {
  const frame = await (await page.waitForSelector('#pane iframe')).contentFrame()
  if (!frame) throw new Error('The pane has no page.')
  await frame.getByRole('button', { name: 'Look again' }).waitFor()
  return frame
}

/** How many pixels of the grid have exactly a colour, given as six hexadecimal digits. */
export function pixelsOf(page: Page, colour: string): Promise<number> {
  const wanted = [0, 2, 4].map((at) => parseInt(colour.slice(at, at + 2), 16))
  return page.evaluate(([red, green, blue]) => {
    let count = 0
    for (const canvas of document.querySelectorAll<HTMLCanvasElement>('#grid canvas')) {
      const { width, height } = canvas
      const data =
        width * height > 0 ? canvas.getContext('2d')?.getImageData(0, 0, width, height).data : undefined
      for (let i = 0; data && i < data.length; i += 4)
        if (data[i] === red && data[i + 1] === green && data[i + 2] === blue) count++
    }
    return count
  }, wanted)
}

/** The colour of one pixel of the grid, as six hexadecimal digits in capitals. */
export function colourAt(page: Page, { x, y }: { readonly x: number; readonly y: number }): Promise<string> {
  return page.evaluate(
    (at) => {
      const canvas = document.querySelector<HTMLCanvasElement>('#univer-sheet-main-canvas_bench')
      const scale = canvas ? canvas.width / canvas.clientWidth : 1
      const data = canvas?.getContext('2d')?.getImageData(at.x * scale, at.y * scale, 1, 1).data ?? []
      const digits = Array.from(data.slice(0, 3), (part) => part.toString(16).padStart(2, '0'))
      return digits.join('').toUpperCase()
    },
    { x, y },
  )
}

/** What a cell of the sheet in front holds, by row and column from 0. */
export function valueAt(page: Page, row: number, col: number): Promise<unknown> {
  return page.evaluate(
    (area) => {
      const grid = window.columnwiseBench?.bench.grid
      return grid?.values(grid.activeSheet(), area)[0]?.[0]
    },
    { row, col, rows: 1, cols: 1 },
  )
}

/** Presses Tab until an element of the pane has the focus. Throws Error where Tab does not reach it. */
export async function tabTo({ page }: Stage, target: Locator): Promise<void> {
  for (let presses = 0; presses < 60; presses++) {
    if (await target.evaluate((element) => element === document.activeElement)) return
    await page.keyboard.press('Tab')
  }
  throw new Error('Tab does not reach it.')
}

/** What axe-core finds wrong with a page as it is, by rule and element, the size of targets included; none where all is well. */
export async function axeProblems(pane: Frame): Promise<string[]> {
  await pane.evaluate(axe.source)
  const { violations } = await pane.evaluate(() =>
    (window as unknown as { axe: typeof axe }).axe.run({ rules: { 'target-size': { enabled: true } } }),
  )
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`))
}

/** Fails where anything was asked for off this computer, or an error was thrown or logged. */
export function expectQuiet({ watched }: Stage): void {
  expect(watched.strayRequests).toEqual([])
  expect(watched.errors).toEqual([])
}
