import { same } from './check'
import type { Check } from './check'

/** The shared runtime. */
export const RUNTIME: readonly Check[] = [
  {
    name: 'the add-in can show its pane',
    run: async () => {
      await Office.addin.showAsTaskpane()
      // Shown twice, it stays shown.
      await Office.addin.showAsTaskpane()
      same('function', typeof Office.actions.associate, 'function')
    },
  },
]
