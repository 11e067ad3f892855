import { mkdir } from 'node:fs/promises'
import type { Frame, Page } from 'playwright-core'
import type {} from '../../src/bench/page/bench'
import { serveBench } from '../../src/bench/server'
import { startBrowser } from '../bench/browser'
import { builds } from '../setup/builds'

const FOLDER = '.pictures'
/** How far the model is stepped forward: the exchange through the zero is done. */
const STEPS = 6

/** `npm run pictures`: takes the README's pictures anew, of the bench with its demo class. */
async function takePictures(): Promise<void> {
  await mkdir(FOLDER, { recursive: true })
  const server = await serveBench(await builds())
  const browser = await startBrowser()
  const page = await browser.newPage({ viewport: { width: 1320, height: 820 }, reducedMotion: 'reduce' })
  await page.goto(server.url)
  await page.waitForFunction(() => window.columnwiseBench?.functionsConnected)
  await page.getByRole('button', { name: 'Got it' }).click()
  const pane = await (await page.waitForSelector('#pane iframe')).contentFrame()
  if (!pane) throw new Error('The pane has no page.')

  await pane.getByRole('tab', { name: 'Mark' }).click()
  await pane.getByRole('button', { name: 'Mark this sheet' }).click()
  await pane.getByText('is marked').waitFor()
  await shoot(page, 'marked-sheet')

  await pane.getByRole('tab', { name: 'Set' }).click()
  await pane.getByRole('list', { name: 'Questions drawn' }).waitFor()
  await shootPane(page, pane, 'set')

  await pane.getByRole('tab', { name: 'Model' }).click()
  await pane.getByLabel('An addition or subtraction').fill('305 - 128')
  await pane.getByLabel('An addition or subtraction').press('Enter')
  const next = pane.getByRole('button', { name: 'Next', exact: true })
  for (let step = 0; step < STEPS; step++) await next.click()
  await shootPane(page, pane, 'model')

  await pane.getByRole('tab', { name: 'Review' }).click()
  await pane.getByRole('heading', { name: 'Pupils by family' }).waitFor()
  await shootPane(page, pane, 'review')
  await pane.getByRole('tab', { name: 'Why', exact: true }).click()
  await shootPane(page, pane, 'why')

  await pane.getByRole('tab', { name: 'Record', exact: true }).click()
  await pane.getByLabel('Class').fill('Kingfisher')
  await pane.getByRole('button', { name: 'Add Kingfisher to Record' }).click()
  const praise = pane.getByRole('heading', { name: 'What to praise this week' })
  await praise.waitFor()
  await pane.getByText(/^The list: /).click()
  await praise.evaluate((heading) => {
    heading.scrollIntoView()
  })
  await shootPane(page, pane, 'praise', false)

  await pane.getByRole('tab', { name: 'Set' }).click()
  await pane.getByRole('button', { name: 'Lesson, starters and puzzles' }).click()
  const part = (name: string) => pane.getByRole('combobox', { name: 'What to make' }).selectOption(name)
  await part('Lesson set')
  await pane.getByText(/^The objective: /).click()
  await shootPane(page, pane, 'lesson')
  await part('Personal sets')
  await pane.getByText(/^\d+ pupils: \d+ questions$/).click()
  await shootPane(page, pane, 'personal')
  await part('Dice starter')
  await pane.getByRole('table').last().waitFor()
  await shootPane(page, pane, 'starter')
  await part('Number triangles')
  await shootPane(page, pane, 'triangles')
  await part('Two-step stories')
  const opening = page.waitForEvent('popup')
  await pane.getByRole('button', { name: 'Look and print' }).last().click()
  const handout = await opening
  await handout.setViewportSize({ width: 860, height: 1180 })
  await handout.getByRole('heading', { level: 1 }).first().waitFor()
  await shoot(handout, 'handout')

  await browser.close()
  await server.close()
}

async function shoot(page: Page, name: string): Promise<void> {
  await page.waitForTimeout(1500)
  await page.screenshot({ path: `${FOLDER}/${name}.png` })
}

/** The pane alone, once it has come to rest. */
async function shootPane(page: Page, pane: Frame, name: string, fromTop = true): Promise<void> {
  await pane.evaluate((toTop) => {
    if (toTop) for (const element of document.querySelectorAll('*')) element.scrollTop = 0
  }, fromTop)
  await page.waitForTimeout(700)
  await page.locator('#pane').screenshot({ path: `${FOLDER}/${name}.png` })
}

await takePictures()
process.exit(0)
