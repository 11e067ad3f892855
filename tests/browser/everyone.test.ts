import type { Frame } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { shutOut } from './checks'
import { expectQuiet, openStage, useStage, type Stage } from './stage'
import { WALKS } from './states/index'
import { lessonStates } from './states/lesson'
import type { State } from './states/steps'

useStage()

/** Text as far apart as it must be able to stand: WCAG 2.2, success criterion 1.4.12. */
const SPACED =
  '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }'
/** How the pane may be shown. */
interface Shown {
  readonly name: string
  readonly dark?: boolean
  readonly forcedColours?: boolean
  readonly width: number
  readonly height?: number
  readonly style?: string
}

/** 200% of a pane that is 320 pixels wide leaves 160 CSS pixels, half of what WCAG 2.2 asks for (1.4.10). */
const MODES: readonly Shown[] = [
  { name: 'light', width: 320 },
  { name: 'dark', width: 320, dark: true },
  { name: 'in high contrast', width: 320, forcedColours: true },
  { name: 'at 200%', width: 160, height: 400 },
  { name: 'with text spaced out', width: 320, style: SPACED },
]
const LIMIT = 300_000

/** Has the pane, or a window that it opened, shown so; a window keeps its own size. Gives what takes the mode's style away again. */
async function show({ page }: Stage, frame: Frame, mode: Shown): Promise<() => Promise<void>> {
  await frame.page().emulateMedia({
    colorScheme: mode.dark ? 'dark' : 'light',
    forcedColors: mode.forcedColours ? 'active' : 'none',
  })
  await page.locator('#pane iframe').evaluate(({ style }, { width, height }) => {
    style.width = `${width}px`
    style.height = height === undefined ? '' : `${height}px`
  }, mode)
  const added = mode.style === undefined ? null : await frame.addStyleTag({ content: mode.style })
  await frame.waitForFunction(({ dark = false, forcedColours = false }) => {
    const pane = document.querySelector('.pane')
    return (
      matchMedia('(forced-colors: active)').matches === forcedColours &&
      matchMedia('(prefers-color-scheme: dark)').matches === dark &&
      (pane === null || pane.classList.contains('dark') === dark)
    )
  }, mode)
  await frame.evaluate(
    () =>
      new Promise<void>((resolve) => {
        requestAnimationFrame(() => {
          requestAnimationFrame(() => {
            resolve()
          })
        })
      }),
  )
  return async () => {
    await added?.evaluate((style) => {
      ;(style as Element).remove()
    })
  }
}

/** What shuts somebody out in any of the states, however they are shown, each with the names of its state and mode. */
async function walk(stage: Stage, states: readonly State[]): Promise<string[]> {
  const found: string[] = []
  for (const state of states) {
    const window = 'window' in state ? await state.window(stage) : null
    if ('open' in state) await state.open(stage)
    const frame = window ?? stage.pane
    const text = () => frame.locator('body').evaluate((body) => body.textContent)
    const opened = await text()
    for (const mode of MODES) {
      const takeBack = await show(stage, frame, mode)
      const problems = await shutOut(frame)
      found.push(...problems.map((problem) => `${state.name}, ${mode.name}: ${problem}`))
      await takeBack()
    }
    const after = await text()
    if (after !== opened)
      found.push(`${state.name}: says something else after it has been looked at: ${changeOf(opened, after)}`)
    await window?.page().close()
  }
  return found
}

/** Where two texts begin to differ, and how each goes on. */
function changeOf(before: string | null, after: string | null): string {
  const [one, other] = [before ?? '', after ?? '']
  let at = 0
  while (one[at] === other[at]) at++
  return [one, other].map((each) => `“${each.slice(Math.max(0, at - 40), at + 60)}”`).join(', then ')
}

describe('nobody is shut out, however the pane is shown,', () => {
  it.each(WALKS.map(({ area, states }) => [area, states] as const))(
    'of %s, in any of its states',
    async (_area, states) => {
      const stage = await openStage({ width: 320 })
      expect(await walk(stage, states)).toEqual([])
      expectQuiet(stage)
      await stage.page.close()
    },
    LIMIT,
  )

  it(
    'of what is made for a lesson',
    async () => {
      const stage = await openStage({ width: 320 })
      expect(await walk(stage, await lessonStates(stage))).toEqual([])
      expectQuiet(stage)
      await stage.page.close()
    },
    LIMIT,
  )
})

describe('arrow keys', () => {
  it('lead from tab to tab, round the ends, as Home and End lead to them', async () => {
    const { pane, page } = await openStage()
    const opened = () => pane.evaluate(() => document.activeElement?.textContent)
    await pane.getByRole('tab', { name: 'Mark' }).focus()
    const walked: unknown[] = []
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowLeft', 'Home', 'End']) {
      await page.keyboard.press(key)
      walked.push(await opened())
    }
    expect(walked).toEqual(['Review', 'Set', 'Review', 'Set', 'Review'])
    await pane.getByRole('heading', { name: 'Pupils by family' }).waitFor()
    await pane.getByRole('tab', { name: 'Pupils' }).focus()
    await page.keyboard.press('ArrowLeft')
    expect(await opened()).toBe('Record')
    await page.close()
  })
})

describe('the checks', () => {
  it('find what shuts somebody out', async () => {
    const { page } = await openStage()
    await page.goto('about:blank')
    await page.setContent(`<!doctype html><html lang="en-GB"><title>Faults</title><main>
      <h1>Faults</h1>
      <button style="width: 20px; height: 20px"></button>
      <button style="height: 30px" tabindex="-1">Never</button>
      <button style="height: 30px; outline: none">Unseen</button>
      <p style="width: 80px; overflow: hidden; white-space: nowrap">Longer than its box by far</p>
      <p style="width: 200vw; color: #ccc">Wide and pale</p>
      <div style="position: relative"><button style="height: 30px">Behind</button><div style="position: absolute; inset: 0; background: #fff"></div></div>
      <p id="moves">Moves</p></main>`)
    await page.evaluate(() => {
      document
        .getElementById('moves')
        ?.animate({ opacity: [0.9, 1] }, { duration: 500, iterations: Infinity })
    })
    const found = (await shutOut(page.mainFrame())).map((problem) => problem.replace(/(?: by \d+)?:.*$/s, ''))
    expect(new Set(found)).toEqual(
      new Set([
        'button-name',
        'color-contrast',
        'no name',
        'too small, 20 × 20',
        'scrolls sideways',
        'reaches beyond the page',
        'cut off',
        'moves',
        'does not show the focus',
        'has the focus out of sight',
        'not reached by Tab',
      ]),
    )
    await page.close()
  })
})

describe('Excel’s own theme', () => {
  /** Has Excel tell a theme, or none, and the pane come to the front. */
  const tell = ({ pane }: Stage, theme: Partial<Office.OfficeTheme> | null) =>
    pane.evaluate((told) => {
      if (told) window.toldTheme = told
      else delete window.toldTheme
      window.dispatchEvent(new Event('focus'))
    }, theme)
  const looks = ({ pane }: Stage) =>
    pane.locator('.pane').evaluate((it) => [it.classList.contains('dark'), getComputedStyle(it).colorScheme])

  it('decides over the system’s, for the pane and for what the browser draws in it', async () => {
    const stage = await openStage({ dark: true, tellsTheme: true })
    expect(await looks(stage)).toEqual([true, 'dark'])
    await tell(stage, { isDarkTheme: false, bodyBackgroundColor: '#FFFFFF' })
    expect(await looks(stage)).toEqual([false, 'light'])
    await tell(stage, { bodyBackgroundColor: '#262626' })
    expect(await looks(stage)).toEqual([true, 'dark'])
    await tell(stage, { bodyBackgroundColor: '#F0F0F0' })
    expect(await looks(stage)).toEqual([false, 'light'])
    await tell(stage, null)
    expect(await looks(stage)).toEqual([true, 'dark'])
    expectQuiet(stage)
    await stage.page.close()
  })

  it('shows every area dark on a system that is not', async () => {
    const stage = await openStage({ width: 320, tellsTheme: true })
    await tell(stage, { isDarkTheme: true })
    expect(await looks(stage)).toEqual([true, 'dark'])
    for (const area of ['Set', 'Model', 'Mark', 'Review']) {
      await stage.pane.getByRole('tab', { name: area, exact: true }).click()
      await stage.pane.locator(`#area-${area.toLowerCase()} h2`).first().waitFor()
      expect(await shutOut(stage.pane), area).toEqual([])
    }
    await stage.page.close()
  })
})
