import type { FUniver } from '@univerjs/core/facade'
import type { Bench } from '../bench'
import type { FunctionsMetadata, RegisteredFunction } from '../customFunctions'
import { registerCellFunctions } from './cellFunctions'
import type { CallPath } from './cellFunctions'

/** The add-in's page, as its build made it. */
const TASKPANE = '/taskpane.html'
const FUNCTIONS = '/functions.json'

/** What office.js puts into the add-in's window; the parts that the bench reaches for. */
interface AddinWindow {
  readonly CustomFunctions?: {
    readonly _association: { readonly mappings: Record<string, RegisteredFunction> }
  }
  readonly Office?: {
    readonly actions: { readonly _association: { readonly mappings: Record<string, Command | undefined> } }
  }
}

/** What the add-in has associated with a button of the ribbon. */
type Command = (event: { completed(): void }) => void

/** Presses a button of the ribbon, which may be what wakes the add-in. Gives whether anything came of it, once that is over. */
export async function pressRibbon(
  name: string,
  bench: Bench,
  frame: () => HTMLIFrameElement | null,
): Promise<boolean> {
  await bench.actionsReady
  const { Office } = frame()?.contentWindow as AddinWindow
  const command = Office?.actions._association.mappings[name.toUpperCase()]
  if (!command) return false
  await new Promise<void>((completed) => {
    command({ completed })
  })
  return true
}

/** Shows the add-in in its frame, afresh. Its office.js calls `install` on its window before it starts. */
export async function showPane(container: HTMLElement): Promise<HTMLIFrameElement | null> {
  container.replaceChildren()
  const { ok } = await fetch(TASKPANE, { method: 'HEAD' })
  if (!ok) {
    const message = document.createElement('p')
    message.className = 'message'
    message.textContent = 'The add-in has not been built yet. Run "npm run build", then load this page again.'
    container.append(message)
    return null
  }
  const frame = document.createElement('iframe')
  frame.title = 'Columnwise'
  frame.src = TASKPANE
  container.append(frame)
  return frame
}

/** Makes the add-in's functions callable in cells, as soon as its runtime takes calls. */
export async function connectFunctions(
  api: FUniver,
  bench: Bench,
  frame: () => HTMLIFrameElement | null,
  path: () => CallPath,
): Promise<void> {
  const response = await fetch(FUNCTIONS)
  if (!response.ok) return
  const metadata = (await response.json()) as FunctionsMetadata
  await bench.customFunctionsReady
  const registered = () =>
    (frame()?.contentWindow as AddinWindow | null)?.CustomFunctions?._association.mappings ?? {}
  registerCellFunctions(api, bench, metadata, registered, path)
}
