import type { Handout } from '../../src/lesson/handout'
import { printablePage } from '../../src/lesson/page'
import './handoutPage.css'

/** Shows a hand-out in its window as it will be printed. */
export function showHandout(handout: Handout): void {
  const { head, body } = new DOMParser().parseFromString(printablePage(handout), 'text/html')
  document.title = handout.title
  document.head.querySelector('style[data-handout]')?.remove()
  const style = head.querySelector('style')
  if (style) {
    style.dataset.handout = ''
    document.head.append(style)
  }
  const sheets = document.getElementById('sheets')
  sheets?.replaceChildren(...body.childNodes)
  const said = document.getElementById('said')
  if (said)
    said.textContent =
      'This is how it will be printed, on A4. If Print does nothing in your Excel, close this window, press “Into the workbook” and print from there.'
  document.getElementById('print')?.removeAttribute('disabled')
}
