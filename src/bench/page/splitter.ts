/** Narrowest pane, in pixels: that of Excel's own task pane. */
const NARROWEST_PANE = 320
/** Narrowest grid that is still of use, in pixels. */
const NARROWEST_GRID = 240
const KEY_STEP = 20

/** Lets a person change the pane's width, by dragging the splitter or with the arrow keys on it. */
export function makeSplitter(splitter: HTMLElement, layout: HTMLElement): void {
  const setWidth = (wanted: number): void => {
    const most = Math.max(NARROWEST_PANE, layout.clientWidth - NARROWEST_GRID)
    const width = Math.round(Math.min(most, Math.max(NARROWEST_PANE, wanted)))
    layout.style.setProperty('--pane-width', `${width}px`)
    splitter.setAttribute('aria-valuenow', String(width))
    splitter.setAttribute('aria-valuemax', String(most))
  }
  const width = (): number => Number(splitter.getAttribute('aria-valuenow'))
  splitter.addEventListener('pointerdown', (down) => {
    splitter.setPointerCapture(down.pointerId)
    layout.classList.add('dragging')
  })
  splitter.addEventListener('pointermove', ({ clientX, pointerId }) => {
    if (splitter.hasPointerCapture(pointerId)) setWidth(layout.getBoundingClientRect().right - clientX)
  })
  splitter.addEventListener('lostpointercapture', () => {
    layout.classList.remove('dragging')
  })
  splitter.addEventListener('keydown', ({ key }) => {
    if (key === 'ArrowLeft') setWidth(width() + KEY_STEP)
    if (key === 'ArrowRight') setWidth(width() - KEY_STEP)
  })
  setWidth(width())
}
