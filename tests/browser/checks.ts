import type { CDPSession, Frame, Page } from 'playwright-core'
import { axeProblems } from './stage'

/** The least width and height of a target, in pixels: WCAG 2.2, success criterion 2.5.8. */
const TARGET = 24
/** How long a movement may last for somebody who wants none, in milliseconds: no more than a frame of the screen. */
const STILL = 17
/** More Tab stops than any state of the pane has. */
const MOST_STOPS = 400
/** How often Tab is pressed before it is asked whether the end of the page is reached. */
const AT_ONCE = 20
/** The least height in which what the pane shows can still be read and worked, in pixels. */
const LEAST_HEIGHT = 100

/**
 * Everything that shuts somebody out of a page as it is shown now, in a line each; none where all is well. WCAG 2.2 as far as a machine can
 * tell: axe-core's rules, names of controls as the browser's own accessibility tree has them (4.1.2), every control reached by Tab with
 * its focus in sight (2.1.1, 2.4.7, 2.4.11), size of targets (2.5.8), nothing cut off or scrolled sideways (1.4.4, 1.4.10), nothing
 * moving (2.3.3).
 */
export async function shutOut(frame: Frame): Promise<string[]> {
  const page = frame.page()
  await frame.evaluate(markControls, TARGET)
  return [
    ...(await axeProblems(frame)),
    ...(await nameless(page, frame)),
    ...(await frame.evaluate(tooSmall, TARGET)),
    ...(await frame.evaluate(cutOff, LEAST_HEIGHT)),
    ...(await frame.evaluate(moving, STILL)),
    ...(await notReached(page, frame)),
  ]
}

/** What the checks share on the page. */
interface Helpers {
  readonly controls: () => HTMLElement[]
  readonly isInline: (element: HTMLElement) => boolean
  readonly look: (element: HTMLElement) => string
  readonly brief: (element: Element) => string
}

declare global {
  interface Window {
    columnwiseChecks?: Helpers & {
      /** How controls look without the focus, but those that Tab has come to. */
      readonly looks: Map<Element, string>
      /** What is wrong with those that Tab has come to. */
      readonly problems: string[]
      /** Ends the noting of Tab stops. */
      stopNoting: () => void
    }
  }
}

/** Puts the helpers on the page, and notes how every control looks without the focus. Runs on the page. */
function markControls(): void {
  const CONTROLS = 'a[href], button, input, select, textarea, summary, [tabindex], [role=button]'
  const FOCUS = [
    'outlineStyle',
    'outlineWidth',
    'outlineColor',
    'boxShadow',
    'borderTopColor',
    'borderTopWidth',
    'borderBottomColor',
    'borderBottomWidth',
    'backgroundColor',
    'transform',
    'textDecorationLine',
  ] as const
  const helpers: Helpers = {
    controls: () =>
      Array.from(document.querySelectorAll<HTMLElement>(CONTROLS)).filter(
        (element) =>
          element.checkVisibility({ visibilityProperty: true }) &&
          !element.matches(':disabled, .tab-sentinel'),
      ),
    isInline: (element) =>
      getComputedStyle(element).display === 'inline' &&
      (element.parentElement?.textContent.trim() ?? '') !== element.textContent.trim(),
    look: (element) => {
      const around = [
        element,
        element.nextElementSibling,
        element.parentElement,
        element.parentElement?.parentElement,
      ]
      return around
        .flatMap((each) =>
          each ? [null, '::before', '::after'].map((part) => getComputedStyle(each, part)) : [],
        )
        .map((style) =>
          FOCUS.filter((name) => style.outlineStyle !== 'none' || !name.startsWith('outline'))
            .map((name) => style[name])
            .join(' '),
        )
        .join('|')
    },
    brief: (element) => element.outerHTML.replace(/ class="[^"]*"/g, '').slice(0, 160),
  }
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur()
  const looks = new Map(helpers.controls().map((element) => [element, helpers.look(element)]))
  window.columnwiseChecks = { ...helpers, looks, problems: [], stopNoting: () => undefined }
}

/** Controls that the browser's accessibility tree has no name for. */
async function nameless(page: Page, frame: Frame): Promise<string[]> {
  const session = await page.context().newCDPSession(page)
  const { nodes } = await session.send('Accessibility.getFullAXTree', {
    frameId: await frameIdOf(session, frame),
  })
  await session.detach()
  const focusable = nodes.filter(
    ({ ignored, role, properties = [] }) =>
      !ignored &&
      role?.value !== 'RootWebArea' &&
      properties.some(({ name, value }) => name === 'focusable' && value.value === true),
  )
  const unnamed = focusable.filter(({ name }) => String(name?.value ?? '').trim() === '')
  return [
    ...unnamed.map(({ role }) => `no name: ${String(role?.value)}`),
    ...(focusable.length === 0 && (await frame.evaluate(() => document.querySelector('button'))) !== null
      ? ['no control in the accessibility tree']
      : []),
  ]
}

async function frameIdOf(session: CDPSession, frame: Frame): Promise<string> {
  const { frameTree } = await session.send('Page.getFrameTree')
  const all = [frameTree, ...(frameTree.childFrames ?? [])].map((each) => each.frame)
  const found = all.find(({ url, urlFragment = '' }) => url + urlFragment === frame.url())
  if (!found) throw new Error(`The browser has no frame ${frame.url()}.`)
  return found.id
}

/** Targets that are smaller than they may be; links within a sentence may. Runs on the page. */
function tooSmall(least: number): string[] {
  const { controls, isInline, brief } = window.columnwiseChecks ?? { controls: () => [] }
  return controls()
    .filter((element) => element.matches('a[href], button, input, select, textarea, summary'))
    .filter((element) => {
      const { width, height } = element.getBoundingClientRect()
      return Math.min(width, height) < least - 0.1 && !isInline?.(element)
    })
    .map((element) => {
      const { width, height } = element.getBoundingClientRect()
      return `too small, ${width.toFixed(0)} × ${height.toFixed(0)}: ${brief?.(element) ?? ''}`
    })
}

/** What is wider than the page, cut off, or leaves no room to work in. Runs on the page. */
function cutOff(leastHeight: number): string[] {
  const brief = (element: Element) => window.columnwiseChecks?.brief(element) ?? ''
  const scrolls = (element: Element) => /auto|scroll/.test(getComputedStyle(element).overflowX)
  const main = document.querySelector('main')
  const boxes = [document.documentElement, ...(main ? [main] : [])]
  const isInScroller = (element: Element) => {
    for (let each = element.parentElement; each && each !== main; each = each.parentElement)
      if (scrolls(each)) return true
    return false
  }
  const shown = Array.from(document.querySelectorAll<HTMLElement>('body *')).filter((element) => {
    const { width, height } = element.getBoundingClientRect()
    return element.checkVisibility() && width > 2 && height > 2
  })
  const isBeyond = (element: Element) => {
    const { left, right, width } = element.getBoundingClientRect()
    return width > 2 && (left < -0.5 || right > innerWidth + 0.5) && !isInScroller(element)
  }
  const isCut = (element: HTMLElement) => {
    const { overflowX, overflowY } = getComputedStyle(element)
    const { scrollWidth, clientWidth, scrollHeight, clientHeight } = element
    const hides = (overflow: string) => overflow === 'hidden' || overflow === 'clip'
    return (
      (hides(overflowX) && scrollWidth > clientWidth + 1) ||
      (hides(overflowY) && scrollHeight > clientHeight + 1)
    )
  }
  return [
    ...boxes
      .filter((box) => box.scrollWidth > box.clientWidth)
      .map((box) => `scrolls sideways by ${box.scrollWidth - box.clientWidth}: ${box.tagName}`),
    ...shown
      .filter((element) => isBeyond(element) && ![...element.children].some(isBeyond))
      .map((element) => `reaches beyond the page: ${brief(element)}`),
    ...shown
      .filter((element) => element.textContent.trim() !== '' && !element.closest('svg') && isCut(element))
      .map((element) => `cut off: ${brief(element)}`),
    ...(main && main.clientHeight < leastHeight ? [`only ${main.clientHeight} pixels high: main`] : []),
  ]
}

/** What moves for longer than it may. Runs on the page. */
function moving(longest: number): string[] {
  return document
    .getAnimations()
    .filter(
      ({ playState, effect }) =>
        playState === 'running' && Number(effect?.getComputedTiming().activeDuration) > longest,
    )
    .map(({ effect }) => {
      const { target } = effect as KeyframeEffect
      return `moves: ${target ? (window.columnwiseChecks?.brief(target) ?? '') : ''}`
    })
}

/** Controls that Tab does not reach, or that do not show that they have the focus. Tab is pressed in the browser, its stops are noted on the page. */
async function notReached(page: Page, frame: Frame): Promise<string[]> {
  await frame.evaluate(noteStops)
  const session = await page.context().newCDPSession(page)
  const press = (type: 'rawKeyDown' | 'keyUp') =>
    session.send('Input.dispatchKeyEvent', { type, key: 'Tab', code: 'Tab', windowsVirtualKeyCode: 9 })
  const isAtEnd = () =>
    frame.evaluate(() => document.activeElement === [...document.querySelectorAll('.tab-sentinel')].at(-1))
  let presses = 0
  do {
    await Promise.all(Array.from({ length: AT_ONCE }, () => [press('rawKeyDown'), press('keyUp')]).flat())
    presses += AT_ONCE
  } while (!(await isAtEnd()) && presses < MOST_STOPS)
  await session.detach()
  return frame.evaluate(missed)
}

/**
 * Puts the focus before everything on the page, and notes what is wrong with every control that has the focus when Tab is pressed next. At
 * the end of the page Tab leads no further. Runs on the page.
 */
function noteStops(): void {
  const checks = window.columnwiseChecks
  if (!checks) return
  const sentinelAt = (where: 'afterbegin' | 'beforeend') => {
    const sentinel = document.createElement('span')
    sentinel.tabIndex = 0
    sentinel.className = 'tab-sentinel'
    sentinel.style.position = 'fixed'
    document.body.insertAdjacentElement(where, sentinel)
    return sentinel
  }
  const [start, end] = [sentinelAt('afterbegin'), sentinelAt('beforeend')]
  const isSeen = (element: Element) => {
    const { left, right, top, bottom } = element.getBoundingClientRect()
    const [l, r, t, b] = [
      Math.max(left, 0),
      Math.min(right, innerWidth),
      Math.max(top, 0),
      Math.min(bottom, innerHeight),
    ]
    const points = [
      [(l + r) / 2, (t + b) / 2],
      [l + 3, t + 3],
      [r - 3, b - 3],
    ] as const
    return points.some(([x, y]) => {
      const there = document.elementFromPoint(x, y)
      return (
        there !== null &&
        (element.contains(there) || there.contains(element) || there.closest('label') !== null)
      )
    })
  }
  const note = (event: KeyboardEvent) => {
    const element = document.activeElement
    if (event.key !== 'Tab' || element === start) return
    if (element === end) event.preventDefault()
    else if (!(element instanceof HTMLElement) || element === document.body)
      checks.problems.push('Tab leaves the page before its end')
    else {
      const before = checks.looks.get(element)
      checks.looks.delete(element)
      if (before === checks.look(element))
        checks.problems.push(`does not show the focus: ${checks.brief(element)}`)
      if (!isSeen(element)) checks.problems.push(`has the focus out of sight: ${checks.brief(element)}`)
    }
  }
  window.addEventListener('keydown', note, true)
  checks.stopNoting = () => {
    window.removeEventListener('keydown', note, true)
    if (document.activeElement !== end) checks.problems.push('Tab does not come to the end of the page')
    start.remove()
    end.remove()
  }
  start.focus()
}

/** What was noted at the stops, and controls that Tab has not come to; those that arrow keys lead to from one that it has come to are reached. Runs on the page. */
function missed(): string[] {
  const CONTROL = 'a, button, input, select, textarea, summary, [role=button], [role=tab]'
  const checks = window.columnwiseChecks
  if (!checks) return ['the checks are not on the page']
  checks.stopNoting()
  const { looks, brief, problems } = checks
  const left = [...looks.keys()]
  const isByArrows = (element: Element) => {
    const group = element.closest('[role=tablist], [role=radiogroup]')
    const others = group ? [...group.querySelectorAll('[role=tab], input[type=radio]')] : []
    return others.some((other) => !looks.has(other))
  }
  const unreached = left
    .filter((element) => element.isConnected && !isByArrows(element))
    .filter((element) => element.getAttribute('tabindex') !== '-1' || element.matches(CONTROL))
  return [...problems, ...unreached.map((element) => `not reached by Tab: ${brief(element)}`)]
}
