import { Problem } from '../../src/office/edit/errors'
import { goesForGood, readTraces, removeTraces, type Traces } from '../../src/office/removal/traces'
import { Store } from '../common/store'
import type { Runner } from '../common/runner'

/** What was found of Columnwise in the workbook; null before it was looked for, and after it was removed. */
export interface RemoverState {
  readonly found: Traces | null
}

/** Takes everything of Columnwise out of the workbook, in two steps: it looks and shows, then removes. */
export class Remover extends Store<RemoverState> {
  constructor(private readonly runner: Runner) {
    super({ found: null })
  }

  /** Looks for what there is. */
  readonly look = async (): Promise<void> => {
    await this.runner.run('Looking for what is Columnwise’s', async (work) => {
      this.set({ found: await readTraces(work) })
    })
  }

  /** Leaves everything as it is. */
  readonly leave = (): void => {
    this.set({ found: null })
  }

  /** Removes what was shown, and nothing else: where there is more or less by now, that is shown instead. Gives whether it did. */
  readonly remove = async (): Promise<boolean> => {
    const shown = this.state().found
    if (shown === null) return false
    const removed = await this.runner.run('Removing what is Columnwise’s', async (work) => {
      const now = await readTraces(work)
      this.set({ found: now })
      if (inWords(now) !== inWords(shown))
        throw new Problem(
          'The workbook has changed since Columnwise looked, so nothing was removed.',
          'Read again what would go, then decide.',
        )
      this.runner.wrote(await removeTraces(now, work))
      this.set({ found: null })
      this.runner.say(
        'Everything of Columnwise’s is out of this workbook.',
        now.sheets.length > 0 ? 'Undo brings back colours, flags, notes and comments only.' : '',
      )
      return true
    })
    return removed === true
  }
}

/** What would go, in sentences; none where nothing is Columnwise's. */
export function goes(traces: Traces): string[] {
  const { sheets, own, settings } = traces
  const names = (those: readonly { readonly name: string }[]) => those.map(({ name }) => name).join(', ')
  return [
    ...(sheets.length > 0 ? [`Colours, flags, notes and comments on: ${names(sheets)}.`] : []),
    ...(own.length > 0 ? [`Sheets that Columnwise laid out: ${names(own)}.`] : []),
    ...(settings ? ['The settings.'] : []),
  ]
}

const inWords = (traces: Traces) => [...goes(traces), ...goesForGood(traces), ...traces.stays].join('\n')
