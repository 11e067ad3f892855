import axe from 'axe-core'
import ExcelJS from 'exceljs'
import { readFile } from 'node:fs/promises'
import type { Browser, Frame, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, inject, test } from 'vitest'
import * as XLSX from 'xlsx'
import type { CheckResult } from '../../src/bench/contract'
import type {} from '../../src/bench/page/bench'
import { serveBench } from '../../src/bench/server'
import type { BenchServer } from '../../src/bench/server'
import { bytesOf, connectBrowser, watch } from './browser'
import type { Watch } from './browser'

const FIXTURE = 'tests/bench/fixtures/pane'
/** The colour that the small pane's conditional format gives, as its red, green and blue. */
const COLOUR = [0, 160, 255] as const

let server: BenchServer
let browser: Browser
let page: Page
let watched: Watch

beforeAll(async () => {
  server = await serveBench({ addin: FIXTURE, bench: inject('builds').bench })
  browser = await connectBrowser(inject('chromium'))
})

afterAll(async () => {
  await browser.close()
  await server.close()
})

/** Opens the page afresh and waits until the pane has started. */
async function openPage(width = 1400): Promise<Frame> {
  page = await browser.newPage({ viewport: { width, height: 850 } })
  watched = watch(page)
  await page.goto(server.url)
  await page.waitForFunction(() => window.columnwiseBench?.functionsConnected)
  return paneFrame()
}

async function paneFrame(): Promise<Frame> {
  const frame = await (await page.waitForSelector('#pane iframe')).contentFrame()
  if (!frame) throw new Error('The pane has no page.')
  await frame.waitForFunction(() => document.querySelector('#state')?.textContent === 'Ready in Excel.')
  return frame
}

/** The values of a block of the sheet in front. */
const valuesOf = (row: number, col: number, rows: number, cols: number) =>
  page.evaluate(
    (area) => {
      const grid = window.columnwiseBench?.bench.grid
      return grid?.values(grid.activeSheet(), area)
    },
    { row, col, rows, cols },
  )

/** How many pixels of the grid have exactly that colour. */
const pixelsOf = (colour: readonly [number, number, number]): Promise<number> =>
  page.evaluate((wanted) => {
    let count = 0
    for (const canvas of document.querySelectorAll<HTMLCanvasElement>('#grid canvas')) {
      const { width, height } = canvas
      const data =
        width * height > 0 ? canvas.getContext('2d')?.getImageData(0, 0, width, height).data : undefined
      for (let i = 0; data && i < data.length; i += 4)
        if (data[i] === wanted[0] && data[i + 1] === wanted[1] && data[i + 2] === wanted[2]) count++
    }
    return count
  }, colour)

/** Waits until the number of coloured pixels passes a test, and gives it. */
async function untilPixels(passes: (count: number) => boolean): Promise<number> {
  let count = -1
  await expect
    .poll(async () => passes((count = await pixelsOf(COLOUR))), { timeout: 10_000, interval: 100 })
    .toBe(true)
  return count
}

const expectQuiet = () => {
  expect(watched.strayRequests).toEqual([])
  expect(watched.errors).toEqual([])
}

describe('the bench page', () => {
  afterEach(() => page.close())

  test('opens with the demo class and a running pane, and asks for nothing off this computer', async () => {
    await openPage()
    expect(await valuesOf(2, 0, 2, 3)).toEqual([
      ['Name', '874 − 523', '932 − 457'],
      ['Amira P', 351, 475],
    ])
    expect(await page.locator('#welcome').isVisible()).toBe(true)
    await page.getByRole('button', { name: 'Got it' }).click()
    expect(await page.locator('#welcome').isVisible()).toBe(false)
    expectQuiet()
  })

  test("the pane's conditional format colours the grid, and a typed answer recolours it", async () => {
    const frame = await openPage()
    expect(await pixelsOf(COLOUR)).toBe(0)
    await frame.getByRole('button', { name: 'Colour the answers' }).click()
    const coloured = await untilPixels((count) => count > 10_000)
    await page.evaluate(() => {
      window.columnwiseBench?.bench.select('Kingfisher', 'B6')
    })
    await page.locator('#univer-sheet-main-canvas_bench').click({ position: { x: 500, y: 200 } })
    const { row, col } = await page.evaluate(
      () => window.columnwiseBench?.bench.grid.selection().area ?? { row: 0, col: 0 },
    )
    await page.keyboard.type('351')
    await page.keyboard.press('Enter')
    await untilPixels((count) => count > coloured)
    expect(await valuesOf(row, col, 1, 1)).toEqual([[351]])
    expect(await valuesOf(3, 14, 1, 1)).toEqual([['written by the pane']])
    const typed = `${String.fromCharCode(65 + col)}${row + 1} Unknown`
    await expect.poll(() => frame.evaluate(() => document.title)).toBe(typed)
    expectQuiet()
  })

  test('while a cell is being typed in the pane can do nothing, as in Excel', async () => {
    const frame = await openPage()
    await page.locator('#univer-sheet-main-canvas_bench').click({ position: { x: 500, y: 200 } })
    await page.keyboard.type('35')
    const press = async () => {
      await frame.getByRole('button', { name: 'Colour the answers' }).click()
    }
    const state = () => frame.locator('#state').textContent()
    await press()
    await expect.poll(state).toBe('InvalidOperationInCellEditMode')
    await page.locator('#univer-sheet-main-canvas_bench').click({ position: { x: 300, y: 300 } })
    await press()
    await expect.poll(state).toBe('Coloured.')
  })

  test('passes the whole host contract', async () => {
    const frame = await openPage()
    await frame.addScriptTag({ url: '/bench/contract.js' })
    const results = await frame.evaluate(() => {
      const { columnwiseContract } = window as unknown as {
        columnwiseContract: { runContract: () => Promise<readonly CheckResult[]> }
      }
      return columnwiseContract.runContract()
    })
    expect(results.filter(({ passed }) => !passed)).toEqual([])
    expect(results.length).toBeGreaterThan(50)
    expectQuiet()
  })

  test('custom functions live in cells, and both call paths agree', async () => {
    await openPage()
    const formulas = ['=COLUMNWISE.TWICE(21)', '=COLUMNWISE.FAIL()', '=COLUMNWISE.SHAPE(A4:B5)']
    const calculated = async (path: 'direct' | 'runtime', row: number) => {
      await page.evaluate(
        ({ path: to, row: at, formulas: texts }) => {
          const bench = window.columnwiseBench
          if (!bench) return
          bench.functionPath = to
          const { grid } = bench.bench
          texts.forEach((formula, i) => {
            grid.write(grid.activeSheet(), at, 15 + i, [[{ formula }]])
          })
          grid.flush()
        },
        { path, row, formulas },
      )
      const wanted = [
        [42, '#N/A', 'Amira P!', '351!'],
        ['', '', 'Bertie L!', '351!'],
      ]
      await expect.poll(() => valuesOf(row, 15, 2, 4), { timeout: 10_000 }).toEqual(wanted)
    }
    await calculated('direct', 3)
    await calculated('runtime', 10)
    expectQuiet()
  })

  test('opens a file and saves it with what the pane did', async () => {
    await openPage()
    const made = new ExcelJS.Workbook()
    const sheet = made.addWorksheet('Heron')
    sheet.addRows([
      ['Name', '52 − 17'],
      ['', ''],
      ['', ''],
      ['Ada', 351],
    ])
    await page.setInputFiles('#open-file', {
      name: 'Heron.xlsx',
      mimeType: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
      buffer: Buffer.from(await made.xlsx.writeBuffer()),
    })
    await expect.poll(() => page.locator('#status').textContent()).toBe('Opened.')
    const frame = await paneFrame()
    await frame.getByRole('button', { name: 'Colour the answers' }).click()
    await untilPixels((count) => count > 500)
    const saving = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Save' }).click()
    const download = await saving
    expect(download.suggestedFilename()).toBe('Heron.xlsx')
    const bytes = await bytesOf(download)
    const cells = XLSX.read(bytes).Sheets.Heron
    expect([cells?.A4, cells?.B4, cells?.O4].map((cell) => (cell as XLSX.CellObject).v)).toEqual([
      'Ada',
      351,
      'written by the pane',
    ])
    const again = new ExcelJS.Workbook()
    await again.xlsx.load(bytes as unknown as ExcelJS.Buffer)
    const [rule] = (again.getWorksheet('Heron') as unknown as { conditionalFormattings: { ref: string }[] })
      .conditionalFormattings
    expect(rule).toMatchObject({ ref: 'B4:M31', rules: [{ type: 'expression', formulae: ['B4=351'] }] })
    expectQuiet()
  })

  test('a file that is no workbook is refused with a sentence, and the workbook stays', async () => {
    await openPage()
    await page.setInputFiles('#open-file', {
      name: 'x.xlsx',
      mimeType: 'text/plain',
      buffer: Buffer.from('no workbook'),
    })
    await expect.poll(() => page.locator('#status').textContent()).toContain('This file cannot be read.')
    expect(await valuesOf(3, 0, 1, 1)).toEqual([['Amira P']])
    expectQuiet()
  })

  test('the pane is never narrower than 320 pixels, and stands below the grid on a narrow screen', async () => {
    await openPage()
    const paneWidth = async () => (await page.locator('#pane').boundingBox())?.width ?? 0
    const before = await paneWidth()
    await page.locator('#splitter').focus()
    await page.keyboard.press('ArrowLeft')
    expect(await paneWidth()).toBe(before + 20)
    for (let i = 0; i < 10; i++) await page.keyboard.press('ArrowRight')
    expect(await paneWidth()).toBe(320)
    const splitter = await page.locator('#splitter').boundingBox()
    await page.mouse.move((splitter?.x ?? 0) + 4, 500)
    await page.mouse.down()
    await page.mouse.move((splitter?.x ?? 0) - 96, 500)
    await page.mouse.up()
    expect(Math.abs((await paneWidth()) - 420)).toBeLessThanOrEqual(8)
    await page.setViewportSize({ width: 400, height: 800 })
    const [grid, pane] = [
      await page.locator('#grid').boundingBox(),
      await page.locator('#pane').boundingBox(),
    ]
    expect(pane?.width).toBe(400)
    expect(pane?.y).toBeGreaterThanOrEqual((grid?.y ?? 0) + (grid?.height ?? 0))
    expect(grid?.height).toBeGreaterThan(150)
  })

  test("the page's own parts have no accessibility faults that axe finds", async () => {
    await openPage()
    // axe may not be added as a script under the page's policy; evaluating it is not held to that.
    await page.evaluate(axe.source)
    const violations = await page.evaluate(async () => {
      const { axe: checker } = window as unknown as { axe: typeof import('axe-core') }
      const found = await checker.run(
        { include: ['.bar', '#welcome', '#splitter', '#pane'] },
        { iframes: false },
      )
      return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)
    })
    expect(violations).toEqual([])
  })
})

describe('the server', () => {
  test('gives pages a policy that lets nothing off this computer be asked for', async () => {
    const { headers } = await fetch(server.url)
    expect(headers.get('content-security-policy')).toContain("default-src 'self'")
  })

  test('puts one line before office.js and leaves the pane as it was built', async () => {
    const [pane, office, original] = await Promise.all([
      fetch(new URL('/taskpane.html', server.url)).then((response) => response.text()),
      fetch(new URL('/office/office.js', server.url)).then((response) => response.text()),
      readFile('node_modules/@microsoft/office-js/dist/office.js', 'utf8'),
    ])
    expect(pane).toBe(await readFile(`${FIXTURE}/taskpane.html`, 'utf8'))
    const [first, ...rest] = office.split('\n')
    expect(first).toBe('parent.columnwiseBench?.install(window);')
    expect(rest.join('\n')).toBe(original)
  })

  test('serves nothing outside its folders', async () => {
    const outside = await fetch(new URL('/bench/%2e%2e/%2e%2e/package.json', server.url))
    expect(outside.status).toBe(404)
    expect((await fetch(new URL('/..%2f..%2fpackage.json', server.url))).status).toBe(404)
  })
})
