import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import type { Browser, Frame, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest'
import { serveBench, type BenchServer } from '../../src/bench/server'
import { CONTRACT } from '../../src/bench/contract'
import { AFTER_WINDOWS, IN_PANE } from '../../src/bench/contract/inPane'
import { STEPS } from '../../src/bench/contract/steps'
import { connectBrowser, watch } from '../bench/browser'
import { addinProblems } from '../house/addin'
import { axeProblems } from './stage'

const { trial, bench } = inject('builds')

let server: BenchServer | undefined
let browser: Browser | undefined

beforeAll(async () => {
  server = await serveBench({ addin: trial, bench })
  browser = await connectBrowser(inject('chromium'))
})
afterAll(async () => {
  await browser?.close()
  await server?.close()
})

/** What a person does at each step, in the bench's workbook, before pressing Done. */
async function atStep(page: Page, step: number): Promise<void> {
  await page.evaluate((index) => {
    const { bench } = window.columnwiseBench ?? {}
    if (!bench) return
    const sheet = bench.sheetId('Contract check')
    const area = { row: 0, col: 0, rows: 9, cols: 1 }
    const rule = (id: string, formula: string) => ({
      id,
      areas: [area],
      type: 'Custom',
      formula,
      stopIfTrue: false,
      style: { fill: '#FFCC00' },
    })
    if (index === 0) {
      bench.grid.setConditionalFormats(sheet, [rule('a', '=A1>3'), rule('b', '=A1>6'), rule('c', '=A1>6')])
      bench.book.unreadableFormats.set('c', 'all')
    } else if (index === 1) bench.userEdit('Contract check', 'B2', [[475]])
    else if (index === 2) {
      bench.grid.setConditionalFormats(sheet, [])
      bench.userEdit('Contract check', 'D2', [['']])
    }
  }, step)
}

async function openChecks(): Promise<{ page: Page; pane: Frame }> {
  if (!browser || !server) throw new Error('Nothing is served.')
  const page = await browser.newPage({ viewport: { width: 1400, height: 850 } })
  await page.goto(server.url)
  await page.waitForFunction(() => window.columnwiseBench?.functionsConnected)
  await page.locator('#pane iframe').evaluate(({ style }) => {
    style.width = '320px'
  })
  const pane = await (await page.waitForSelector('#pane iframe')).contentFrame()
  if (!pane) throw new Error('There is no pane.')
  await pane.getByRole('button', { name: 'Host checks' }).click()
  return { page, pane }
}

describe('a volunteer’s trial', () => {
  it('is a folder that only has to be put on a server, with its manifest', () => {
    const read = (name: string) => {
      const file = path.join(trial, name)
      return existsSync(file) ? readFileSync(file) : undefined
    }
    expect(addinProblems(read)).toEqual([])
    expect(read('host-checks.js')).toBeDefined()
  })

  it('runs all checks in the pane, asks for its steps one by one, and gives a report to copy', async () => {
    const { page, pane } = await openChecks()
    const watched = watch(page)
    expect(await axeProblems(pane)).toEqual([])
    await page.screenshot({ path: '.cache/trial-1.png' })
    await pane.getByRole('button', { name: 'Run the checks' }).click()
    const said = pane.locator('.host-checks [role=status]')
    for (const [index, { name, ask }] of STEPS.entries()) {
      await expect
        .poll(() => said.textContent(), { timeout: 120_000 })
        .toBe(`Step ${index + 1} of ${STEPS.length}: ${name}.`)
      await pane.getByText(ask).waitFor()
      if (index === 0) {
        expect(await axeProblems(pane)).toEqual([])
        await page.screenshot({ path: '.cache/trial-2.png' })
      }
      await atStep(page, index)
      await pane.getByRole('button', { name: 'Done' }).click()
    }
    const report = pane.getByRole('textbox', { name: 'Report' })
    await report.waitFor({ timeout: 60_000 })
    const text = await report.inputValue()
    expect(text).toContain('Host: Excel\nPlatform: PC\nBuild: 16.0.17328.20068\nLanguage: en-US on screen')
    expect(text).toMatch(/Requirement sets: ExcelApi 1\.17, no ExcelApiOnline.*DialogApi 1\.2/)
    expect(text).toContain(
      '3 formats; together they cannot be read (ItemNotFound); one by one 2 can be read.',
    )
    expect(text).toMatch(/two windows in a row: The second window opened at try [2-9]/)
    expect(text.split('\n').filter((line) => line.startsWith('failed'))).toEqual([])
    expect(text.split('\n').filter((line) => line.startsWith('passed'))).toHaveLength(
      CONTRACT.length + IN_PANE.length + STEPS.length + AFTER_WINDOWS.length,
    )
    await page.screenshot({ path: '.cache/trial-3.png' })
    await pane.getByRole('button', { name: 'Copy the report' }).click()
    await expect.poll(() => said.textContent()).toMatch(/^The report is (copied|selected)/)
    expect(watched).toEqual({ strayRequests: [], errors: [] })
    await page.close()
  }, 240_000)
})
