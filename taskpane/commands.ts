/** Presses of the ribbon's button that are waiting; once the pane acts on them, what takes them. */
export type Presses = Office.AddinCommands.Event[] | { push(event: Office.AddinCommands.Event): void }

declare global {
  interface Window {
    columnwisePresses?: Presses
  }
}

/**
 * The first of our scripts that the page runs. A press of the ribbon's button may be what woke the page, and is lost where nothing is
 * associated with it by the time the client library is ready (issues 2744 and 5176 of office-js): so presses are taken here at once, and
 * kept until the pane's own script acts on them. The name is the one in the manifest.
 */
window.columnwisePresses = []
Office.actions.associate('markThisSheet', (event: Office.AddinCommands.Event) => {
  window.columnwisePresses?.push(event)
})
