import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import ExcelJS from 'exceljs'
import type {} from '../../src/bench/page/bench'
import { serveBench } from '../../src/bench/server'
import { LOOKS } from '../../src/marksheet/marking/looks'
import { startBrowser } from '../bench/browser'
import { builds } from '../setup/builds'
import { largeSheet } from './reviewing'
import type { Result } from './timing'

/** Milliseconds from the click on Mark to the first colour in the grid, for a class of 30 with 40 questions. */
const LIMIT = 2000
const [PUPILS, QUESTIONS] = [30, 40]
const ROUNDS = 3

/** Times marking on the bench, in Chromium, from click to colour: the client library, the host and the grid's drawing included. */
export async function clicking(): Promise<Result> {
  const server = await serveBench(await builds())
  const browser = await startBrowser()
  const folder = await mkdtemp(join(tmpdir(), 'columnwise-'))
  try {
    const file = join(folder, 'class.xlsx')
    const book = new ExcelJS.Workbook()
    book.addWorksheet('Class').addRows(largeSheet(PUPILS, QUESTIONS).values.map((row) => [...row]))
    await writeFile(file, new Uint8Array(await book.xlsx.writeBuffer()))
    const times: number[] = []
    for (let round = 0; round < ROUNDS; round++) {
      const page = await browser.newPage({ viewport: { width: 1400, height: 850 } })
      await page.goto(server.url)
      await page.waitForFunction(() => window.columnwiseBench?.functionsConnected)
      await page.setInputFiles('#open-file', file)
      await page.locator('#status', { hasText: 'Opened.' }).waitFor()
      const pane = await (await page.waitForSelector('#pane iframe')).contentFrame()
      await pane?.getByText(`${PUPILS} pupils, ${QUESTIONS} questions`).waitFor()
      const start = Date.now()
      await pane?.getByRole('button', { name: 'Mark this sheet' }).click()
      await page.waitForFunction(isColoured, LOOKS.wrong.fill, { polling: 'raf' })
      times.push(Date.now() - start)
      await page.close()
    }
    const time = times.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)] ?? NaN
    return {
      name: 'Clicking',
      lines: [
        `${PUPILS} pupils × ${QUESTIONS} questions on the bench, from click to colour: ${time} ms (limit ${LIMIT} ms)`,
      ],
      met: time < LIMIT,
    }
  } finally {
    await browser.close()
    await server.close()
    await rm(folder, { recursive: true })
  }
}

/** Whether the grid shows a colour, given as six hexadecimal digits. Runs in the page. */
function isColoured(colour: string): boolean {
  const [red, green, blue] = [0, 2, 4].map((at) => parseInt(colour.slice(at, at + 2), 16))
  return [...document.querySelectorAll<HTMLCanvasElement>('#grid canvas')].some((canvas) => {
    const { width, height } = canvas
    const data =
      width * height > 0 ? canvas.getContext('2d')?.getImageData(0, 0, width, height).data : undefined
    for (let i = 0; data && i < data.length; i += 4)
      if (data[i] === red && data[i + 1] === green && data[i + 2] === blue) return true
    return false
  })
}
