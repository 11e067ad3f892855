import { createRoot } from 'react-dom/client'
import { printQuestion } from '../src/arithmetic/question'
import type { Send } from './common/largeWindow'
import { listenToPane } from './common/opener'
import { projectedIn, projectedMessage, type ProjectedQuestion } from './model/projected'
import { Projector } from './model/Projector'

/**
 * The large window: all that it shows stands in its address, so that it goes on when the pane is closed. While the pane is there, each
 * follows the steps of the other.
 */
function start(): void {
  const place = document.getElementById('projector')
  if (!place) return
  const asked = projectedIn(location.search)
  if ('problem' in asked) {
    place.textContent = `${asked.problem} Close this window and open it again from the pane.`
    return
  }
  const root = createRoot(place)
  const toPane: Send[] = []
  const show = (shown: ProjectedQuestion) => {
    root.render(
      <Projector
        shown={shown}
        onShow={(next) => {
          const { question, ...others } = next
          show(next)
          for (const send of toPane) send(projectedMessage({ text: printQuestion(question), ...others }))
        }}
      />,
    )
  }
  show(asked)
  listenToPane(
    (message) => {
      const heard = projectedIn(message)
      if (!('problem' in heard)) show(heard)
    },
    (send) => toPane.push(send),
  )
}

start()
