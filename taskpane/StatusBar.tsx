import { Button, ProgressBar } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import { UNDO } from './common/icons'
import { Notice } from './common/Notice'
import { useRunner, useRunnerState } from './common/pane'

/** Whether nothing should move on screen: a bar that does not know how far work is would. */
const wantsStill = () => matchMedia('(prefers-reduced-motion: reduce)').matches

/** The foot of the pane: how far work is and Stop; what was done or went wrong; and Undo, in sight after everything written. */
export function StatusBar(): ReactElement {
  const runner = useRunner()
  const { running, notice, undo } = useRunnerState()
  return (
    <footer className="status">
      <div role="status">
        {running && (
          <div className="running">
            <p>
              {running.title}
              {running.words === '' ? ' …' : `: ${running.words} …`}
            </p>
            <Button size="small" onClick={runner.stop}>
              Stop
            </Button>
            <ProgressBar aria-label={running.title} value={running.part ?? (wantsStill() ? 0 : undefined)} />
          </div>
        )}
      </div>
      {notice && <Notice said={notice} onClose={runner.hush} />}
      {undo && (
        <Button className="undo" icon={UNDO} disabled={running !== null} onClick={() => void runner.undo()}>
          Undo {undo.title}
        </Button>
      )}
    </footer>
  )
}
