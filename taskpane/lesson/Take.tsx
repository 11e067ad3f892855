import { Button } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import { worksheetsOf } from '../../src/lesson/cells/worksheet'
import type { Handout } from '../../src/lesson/handout'
import { inSeries } from '../../src/lesson/words'
import { writeHandout } from '../../src/office/handouts/sheets'
import { Card } from '../common/Card'
import { CELLS, PRINT } from '../common/icons'
import { useBusy, useRunner } from '../common/pane'
import { openHandout } from './handover'

/**
 * Takes a hand-out out of the pane: to the printer, and onto sheets of the workbook unless it goes there in another way (`onlyPrints`).
 * `handout` is null where there is none yet; `onPrint` comes after it was opened.
 */
export function Take(props: {
  readonly handout: Handout | null
  readonly onlyPrints?: boolean
  readonly onPrint?: () => Promise<void>
}): ReactElement {
  const { handout, onlyPrints = false, onPrint } = props
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
              await onPrint?.()
            })
          }
        >
          Look and print
        </Button>
        {!onlyPrints && (
          <Button
            icon={CELLS}
            disabled={busy}
            onClick={() =>
              void runner.run('Writing the sheets', async (work) => {
                if (!handout) return
                const { done, sheets } = await writeHandout(worksheetsOf(handout), work)
                runner.wrote(done)
                runner.say(
                  `Ready to print: ${inSeries(sheets)}.`,
                  'Press Ctrl+P to print the sheet in front.',
                )
              })
            }
          >
            Into the workbook
          </Button>
        )}
      </div>
    </Card>
  )
}
