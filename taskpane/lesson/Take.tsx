import { Button } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import type { Handout } from '../../src/lesson/handout'
import { Card } from '../common/Card'
import { PRINT } from '../common/icons'
import { useBusy, useRunner } from '../common/pane'
import { openHandout } from './handover'

/** Takes a hand-out out of the pane: to the printer. `handout` is null where there is none yet. */
export function Take({ handout }: { readonly handout: Handout | null }): ReactElement {
  const runner = useRunner()
  const busy = useBusy() || handout === null
  return (
    <Card title="Take it with you">
      <div className="buttons">
        <Button
          appearance="primary"
          icon={PRINT}
          disabled={busy}
          onClick={() =>
            void runner.run('Opening the sheets to print', async () => {
              if (handout) await openHandout(handout)
            })
          }
        >
          Look and print
        </Button>
      </div>
    </Card>
  )
}
