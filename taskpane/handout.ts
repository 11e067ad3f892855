import { askForHandout } from './lesson/handover'
import { showHandout } from './lesson/handoutPage'

/** The window that shows a hand-out as it is printed: asks the pane for it, shows it, prints it. */
function start(): void {
  document.getElementById('print')?.addEventListener('click', () => {
    window.print()
  })
  askForHandout(showHandout)
}

start()
