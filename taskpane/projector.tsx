import { createRoot } from 'react-dom/client'
import { projectedIn } from './model/projected'
import { Projector } from './model/Projector'

/** The large window: all that it shows stands in its address, so that it goes on when the pane is closed. */
function start(): void {
  const place = document.getElementById('projector')
  if (!place) return
  const shown = projectedIn(location.search)
  if ('problem' in shown)
    place.textContent = `${shown.problem} Close this window and open it again from the pane.`
  else createRoot(place).render(<Projector shown={shown} />)
}

start()
