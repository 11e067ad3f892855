import { inflateSync } from 'node:zlib'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { watch } from '../bench/browser'
import {
  axeProblems,
  expectQuiet,
  openStage,
  tabTo,
  useStage,
  valueAt,
  type Setting,
  type Stage,
} from './stage'

useStage()

const button = ({ pane }: Stage, name: string | RegExp) => pane.getByRole('button', { name, exact: true })

/** The pane with Model open and a question shown. */
async function modelOf(question: string, setting: Setting = {}): Promise<Stage> {
  const stage = await openStage(setting)
  const { pane } = stage
  await pane.getByRole('tab', { name: 'Model' }).click()
  await pane.getByLabel('An addition or subtraction').fill(question)
  await pane.getByLabel('An addition or subtraction').press('Enter')
  await button(stage, 'Next').waitFor()
  return stage
}

const said = ({ pane }: Stage) => pane.locator('.player .say').textContent()
const paper = ({ pane }: Stage) => pane.locator('.player .paper')
const select = (page: Page, address: string) =>
  page.evaluate((cell) => {
    window.columnwiseBench?.bench.select('Kingfisher', cell)
  }, address)

/** Whether an element of the pane lies wholly in the part of it that is seen. */
const isInSight = ({ pane }: Stage, selector: string) =>
  pane.evaluate((wanted) => {
    const [box, main] = [document.querySelector(wanted), document.querySelector('main')]
    if (!box || !main) return false
    const [inner, outer] = [box.getBoundingClientRect(), main.getBoundingClientRect()]
    return inner.top >= outer.top && inner.bottom <= outer.bottom
  }, selector)

describe('a question step by step', () => {
  it('is stepped by buttons and keys, each step with its spoken line, announced', async () => {
    const stage = await modelOf('52 - 17')
    const { pane, page } = stage
    expect(await said(stage)).toMatch(/^52 − 17: how shall we do this\?/)
    await button(stage, 'Next').click()
    expect(await said(stage)).toBe('Write 17 under 52, ones under ones and tens under tens.')
    await page.keyboard.press('ArrowRight')
    expect(await pane.locator('.step-count').textContent()).toMatch(/^Step 2 of \d+$/)
    await page.keyboard.press('End')
    expect(await paper(stage).getAttribute('aria-label')).toBe(
      '52 − 17. Top: 5 crossed out then 4, 12. Subtract: 1, 7. Answer: 3, 5.',
    )
    expect(await pane.locator('.player [role=status]').count()).toBe(1)
    await page.keyboard.press('Home')
    expect(await paper(stage).getAttribute('aria-label')).toBe('52 − 17. Empty squared paper.')
    await button(stage, 'Whole answer').click()
    expect(await pane.locator('.player .paper .cross').count()).toBe(1)
    expect(await button(stage, 'Next').getAttribute('aria-disabled')).toBe('true')
    expectQuiet(stage)
    await page.close()
  })

  it('is taken from the selected cell, a wrong answer with the reason, and follows the selection', async () => {
    const stage = await openStage()
    const { pane, page } = stage
    await pane.getByRole('tab', { name: 'Model' }).click()
    await select(page, 'C3')
    await button(stage, 'Use the selected cell').click()
    await pane.getByRole('group', { name: '932 − 457, step by step' }).waitFor()
    await pane.getByRole('switch', { name: 'Follow my selection' }).click()
    await select(page, 'B3')
    await pane.getByRole('group', { name: '874 − 523, step by step' }).waitFor()
    expectQuiet(stage)
    await page.close()
  })

  it('says in a sentence why a text is no question, and shows no working with it', async () => {
    const stage = await modelOf('52 - 17')
    await stage.pane.getByLabel('An addition or subtraction').fill('17 - 52')
    await button(stage, 'Show').click()
    await stage.pane.getByText('The number taken away is greater than the number it is taken from.').waitFor()
    expect(await stage.pane.locator('svg.paper').count()).toBe(0)
    await stage.page.close()
  })
})

describe('what went wrong', () => {
  it('shows a working with a mistake alone, then where it is, then the right one and what helps', async () => {
    const stage = await modelOf('305 - 128', { width: 320 })
    const { pane, page } = stage
    await pane
      .getByLabel('The pupil’s answer')
      .selectOption({ label: '187: Exchanges through a 0 but leaves it as 10, not 9.' })
    const compared = pane.locator('.compared')
    const papers = compared.locator('svg.paper')
    const heard = () => compared.getByRole('status').innerText()
    await compared.getByText('A working with a mistake. Where is it?').waitFor()
    expect(await papers.count()).toBe(1)
    expect(await papers.nth(0).getAttribute('aria-label')).toContain('Answer: 1, 8, 7.')
    expect([await heard(), await papers.locator('.current').count()]).toEqual(['', 0])
    await button(stage, 'Show where').click()
    expect(await heard()).toBe(
      'It first goes wrong in the tens. Exchanges through a 0 but leaves it as 10, not 9.',
    )
    expect(await compared.locator('figcaption').allInnerTexts()).toEqual(['✗ With this fault: 187'])
    expect(await papers.locator('.current').count()).toBe(1)
    await page.keyboard.press('ArrowRight')
    expect(await heard()).toContain('What helps: Exchange in two steps, crossing out in each')
    expect(await papers.nth(1).getAttribute('aria-label')).toContain('Answer: 1, 7, 7.')
    const [wrong, right] = [await papers.nth(0).boundingBox(), await papers.nth(1).boundingBox()]
    expect(right?.y).toBeGreaterThan((wrong?.y ?? 0) + (wrong?.height ?? 0))
    await page.keyboard.press('Home')
    expect(await papers.count()).toBe(1)
    expect(await pane.getByText(/the pupil did/i).count()).toBe(0)
    expectQuiet(stage)
    await page.close()
  })
})

describe('from Review', () => {
  const isOnTab = ({ pane }: Stage) =>
    pane
      .getByRole('tab', { name: 'Model' })
      .evaluate((tab) => tab === document.activeElement && tab.getAttribute('aria-selected') === 'true')

  it('an example against a fault opens in Model with that fault, ready for the large window', async () => {
    const stage = await openStage({ width: 320 })
    const { pane, page } = stage
    await pane.getByRole('tab', { name: 'Review' }).click()
    await pane.getByRole('tab', { name: 'Why', exact: true }).click()
    const group = pane.locator('.group').first()
    const text = await group.locator('summary .sum').innerText()
    await group.getByRole('button', { name: `Model it: ${text}` }).click()
    await pane.getByRole('group', { name: `${text}, step by step` }).waitFor()
    await expect.poll(() => isOnTab(stage)).toBe(true)
    expect(await pane.locator('main').evaluate((main) => main.scrollTop)).toBe(0)
    expect(await pane.getByLabel('The pupil’s answer').inputValue()).toBe('takes-smaller-from-larger')
    const opening = page.waitForEvent('popup')
    await button(stage, 'Large window').click()
    const projector = await opening
    await projector.getByRole('heading', { name: text }).waitFor()
    await projector.getByRole('switch', { name: 'What went wrong here?' }).waitFor()
    await projector.close()
    expectQuiet(stage)
    await page.close()
  })

  it('so do the examples of a group, with its fault, and of a pupil, without one, in place of the one before', async () => {
    const stage = await openStage()
    const { pane, page } = stage
    const models = async (fault: string) => {
      const model = pane.getByRole('button', { name: /^Model it/ }).first()
      const text = ((await model.getAttribute('aria-label')) ?? '').replace('Model it: ', '')
      await model.click()
      await pane.getByRole('group', { name: `${text}, step by step` }).waitFor()
      await expect.poll(() => isOnTab(stage)).toBe(true)
      expect(await pane.getByLabel('The pupil’s answer').inputValue()).toBe(fault)
      await pane.getByRole('tab', { name: 'Review' }).click()
    }
    await pane.getByRole('tab', { name: 'Review' }).click()
    await pane.getByRole('tab', { name: 'Groups', exact: true }).click()
    await models('takes-smaller-from-larger')
    await pane.getByRole('tab', { name: 'Pupils', exact: true }).click()
    await stage.pane.locator('.heat').getByRole('button', { name: 'Bertie L' }).click()
    await models('')
    expectQuiet(stage)
    await page.close()
  })
})

describe('into the sheet', () => {
  it('the layout goes into cells, is asked about where they are not empty, and Undo takes it back', async () => {
    const stage = await modelOf('52 - 17')
    const { pane, page } = stage
    await select(page, 'A3')
    const before = await valueAt(page, 2, 0)
    await button(stage, 'Finished layout into cells').click()
    await pane.getByText(/^Cells A3, .* on Kingfisher are not empty\. Write over them\?$/).waitFor()
    const asking = pane.locator('.write-over')
    expect(await asking.evaluate((box) => box === document.activeElement)).toBe(true)
    await expect.poll(() => isInSight(stage, '.write-over')).toBe(true)
    await button(stage, 'Leave them').click()
    expect(await valueAt(page, 2, 0)).toBe(before)
    await select(page, 'P5')
    await button(stage, 'Finished layout into cells').click()
    await pane.getByText('The layout of 52 − 17 is on Kingfisher.').waitFor()
    expect([await valueAt(page, 7, 16), await valueAt(page, 7, 17)]).toEqual([3, 5])
    await button(stage, 'Undo layout in P5:R8').click()
    await pane.getByText(/^Undone:/).waitFor()
    expect([await valueAt(page, 7, 16), await valueAt(page, 7, 17)]).toEqual(['', ''])
    expectQuiet(stage)
    await page.close()
  })

  it('the picture is a PNG of the paper as it is shown, ink on white', async () => {
    const stage = await modelOf('52 - 17', { dark: true })
    const { pane, page } = stage
    await button(stage, 'Whole answer').click()
    await select(page, 'P5')
    await button(stage, 'Paper as it is now, as a picture').click()
    await pane.getByText('The picture is on the sheet, at the selected cell.').waitFor()
    const shape = await page.evaluate(() => {
      const { book, grid } = window.columnwiseBench?.bench ?? {}
      return book?.sheet(grid?.activeSheet() ?? '').shapes[0]
    })
    expect(shape?.altText).toBe(
      '52 − 17 in columns. Top: 5 crossed out then 4, 12. Subtract: 1, 7. Answer: 3, 5.',
    )
    const png = Buffer.from(shape?.image ?? '', 'base64')
    const [width, height] = [png.readUInt32BE(16), png.readUInt32BE(20)]
    expect(width / height).toBeCloseTo((shape?.width ?? 0) / (shape?.height ?? 1))
    const { paper: white, ink } = shadesOf(png)
    expect(white).toBeGreaterThan(0.5)
    expect(ink).toBeGreaterThan(0.005)
    expectQuiet(stage)
    await page.close()
  })
})

/**
 * The shares of pure white and of dark pixels in a PNG of 8-bit RGBA, by its first channel (PNG specification: chunks 5.3, filters 9.2).
 */
function shadesOf(png: Buffer): { readonly paper: number; readonly ink: number } {
  const [width, height] = [png.readUInt32BE(16), png.readUInt32BE(20)]
  expect([png[24], png[25]]).toEqual([8, 6])
  const data: Buffer[] = []
  for (let at = 8; at < png.length;) {
    const length = png.readUInt32BE(at)
    if (png.toString('latin1', at + 4, at + 8) === 'IDAT') data.push(png.subarray(at + 8, at + 8 + length))
    at += length + 12
  }
  const raw = inflateSync(Buffer.concat(data))
  const stride = width * 4
  let above = new Uint8Array(stride)
  let [white, dark] = [0, 0]
  for (let y = 0; y < height; y++) {
    const filter = raw[y * (stride + 1)]
    const line = Uint8Array.from(raw.subarray(y * (stride + 1) + 1, (y + 1) * (stride + 1)))
    for (let x = 0; x < stride; x++) {
      const [a, b, c] = [line[x - 4] ?? 0, above[x] ?? 0, x < 4 ? 0 : (above[x - 4] ?? 0)]
      line[x] = (line[x] ?? 0) + predicted(filter, a, b, c)
      if (x % 4 === 0 && line[x] === 255) white++
      if (x % 4 === 0 && (line[x] ?? 255) < 64) dark++
    }
    above = line
  }
  return { paper: white / (width * height), ink: dark / (width * height) }
}

function predicted(filter: number | undefined, a: number, b: number, c: number): number {
  if (filter === 1) return a
  if (filter === 2) return b
  if (filter === 3) return Math.floor((a + b) / 2)
  if (filter !== 4) return 0
  const [pa, pb, pc] = [Math.abs(b - c), Math.abs(a - c), Math.abs(a + b - 2 * c)]
  return pa <= pb && pa <= pc ? a : pb <= pc ? b : c
}

describe('beside the steps, on asking', () => {
  it('counters follow the steps and a number line has jumps of its own, by keys, at 320 pixels', async () => {
    for (const setting of [{}, { dark: true }, { forcedColours: true }]) {
      const stage = await modelOf('305 - 128', { width: 320, ...setting })
      const { pane, page } = stage
      await button(stage, 'Whole answer').click()
      await tabTo(stage, pane.getByRole('switch', { name: 'Counters' }))
      await page.keyboard.press('Space')
      const counters = pane.locator('svg.counters')
      expect(await counters.getAttribute('aria-label')).toBe(
        'Counters: 1 hundred with 1 taken away; 7 tens with 2 taken away; 7 ones with 8 taken away.',
      )
      await tabTo(stage, pane.getByRole('switch', { name: 'Number line' }))
      await page.keyboard.press('Space')
      await tabTo(stage, button(stage, 'Next jump'))
      await page.keyboard.press('End')
      await pane.getByText('The jumps make 2 + 70 + 100 + 5 = 177: that is the difference.').waitFor()
      await pane.getByLabel('On the line').selectOption('Count back')
      await pane.getByText('Start at 305.').waitFor()
      expect(await axeProblems(pane)).toEqual([])
      const wide = await pane.locator('main').evaluate((main) => main.scrollWidth - main.clientWidth)
      expect(wide).toBe(0)
      expectQuiet(stage)
      await page.close()
    }
  })
})

describe('the large window', () => {
  it('shows the question and its model alone, goes on without the pane, and is stepped by keys', async () => {
    const stage = await modelOf('305 - 128')
    const { pane, page } = stage
    await pane.getByLabel('The pupil’s answer').selectOption({
      label: '277: Turns a 0 into 9 when exchanging, but takes nothing from the digit to its left.',
    })
    const opening = page.waitForEvent('popup')
    await button(stage, 'Large window').click()
    const projector = await opening
    const watched = watch(projector)
    await projector.getByRole('heading', { name: '305 − 128' }).waitFor()
    await page.goto('about:blank')
    await projector.keyboard.press('ArrowRight')
    await projector.getByText('Write 128 under 305, ones under ones and tens under tens.').waitFor()
    await projector.keyboard.press('End')
    expect(await projector.locator('svg.paper').getAttribute('aria-label')).toContain('Answer: 1, 7, 7.')
    await projector.getByRole('switch', { name: 'What went wrong here?' }).click()
    await projector.getByText('A working with a mistake. Where is it?').waitFor()
    expect(await projector.locator('svg.paper').count()).toBe(1)
    expect(await projector.locator('body').innerText()).not.toMatch(/Turns a 0 into 9|What helps/)
    await projector.keyboard.press('ArrowRight')
    await projector.getByText('It first goes wrong in the tens. Turns a 0 into 9').waitFor()
    expect(await axeProblems(projector.mainFrame())).toEqual([])
    await projector.keyboard.press('ArrowRight')
    await projector.getByText('What helps:').waitFor()
    expect(await projector.locator('svg.paper').count()).toBe(2)
    expect(await axeProblems(projector.mainFrame())).toEqual([])
    expect(await projector.locator('body').innerText()).not.toMatch(/Amira|Patel|Kingfisher/)
    expect(watched).toEqual({ strayRequests: [], errors: [] })
    await projector.close()
    await page.close()
  })

  it('steps together with the pane: Next in one moves the other, and another question in the pane shows there too', async () => {
    const stage = await modelOf('305 - 128')
    const { pane, page } = stage
    const opening = page.waitForEvent('popup')
    await button(stage, 'Large window').click()
    const projector = await opening
    const watched = watch(projector)
    await projector.getByRole('heading', { name: '305 − 128' }).waitFor()
    await button(stage, 'Next').click()
    await projector.getByText(/^Step 1 of /).waitFor()
    await projector.getByRole('button', { name: 'Next' }).click()
    await pane.getByText(/^Step 2 of /).waitFor()
    await projector.keyboard.press('End')
    await pane.getByText('Check with the inverse: 177 + 128 = 305.').waitFor()
    await pane.getByLabel('An addition or subtraction').fill('£5 - £1.35')
    await pane.getByLabel('An addition or subtraction').press('Enter')
    await projector.getByRole('heading', { name: '£5 − £1.35' }).waitFor()
    expect(watched).toEqual({ strayRequests: [], errors: [] })
    expectQuiet(stage)
    await projector.close()
    await button(stage, 'Next').click()
    await pane.getByText(/^Step 1 of /).waitFor()
    await page.close()
  })

  it('says what is missing where its address holds no question', async () => {
    const stage = await modelOf('52 - 17')
    const address = new URL('projector.html?question=hello', stage.pane.url()).href
    await stage.page.goto(address)
    await stage.page
      .getByText('This is not an addition or subtraction question such as 7,214 − 86.')
      .waitFor()
    await stage.page.close()
  })
})
