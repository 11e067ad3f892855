import { Bench } from '../bench'
import { DEMO } from '../demo'
import type { BareWindow } from '../host/officeHost'
import type { CallPath } from './cellFunctions'
import { showDemo } from './demoSheet'
import { FileButtons } from './fileButtons'
import { connectFunctions, pressRibbon, showPane } from './pane'
import { makeSplitter } from './splitter'
import { univerGrid } from './univer'

/** What the page offers to the add-in's frame and to tests. */
export interface BenchPage {
  readonly bench: Bench
  /** Called by the frame before its office.js starts. */
  install(window: BareWindow): void
  /** How cells reach the add-in's functions. */
  functionPath: CallPath
  /** Presses a button of the ribbon; gives whether the add-in acted on it. */
  press(name: string): Promise<boolean>
  /** Whether the add-in's functions can be called in cells. */
  functionsConnected: boolean
}

declare global {
  interface Window {
    columnwiseBench?: BenchPage
  }
}

const element = <T extends HTMLElement>(id: string): T => {
  const found = document.getElementById(id)
  if (!found) throw new Error(`The page lacks #${id}.`)
  return found as T
}

const grid = univerGrid('grid')
const bench = new Bench({ grid })
showDemo(grid, DEMO)
bench.book.name = `${DEMO.name}.xlsx`

const page: BenchPage = {
  bench,
  install: (window) => {
    bench.install(window)
  },
  functionPath: 'direct',
  press: (name) => pressRibbon(name, bench, () => frame),
  functionsConnected: false,
}
window.columnwiseBench = page

let frame: HTMLIFrameElement | null = null
const reloadPane = async (): Promise<void> => {
  // office.js keeps the settings of the workbook there for as long as the window is open; they are not those of another workbook.
  sessionStorage.clear()
  frame = await showPane(element('pane'))
}
new FileButtons(
  bench,
  {
    open: element('open-file'),
    save: element('save-file'),
    name: element('file-name'),
    status: element('status'),
    lossDialog: element('loss'),
    lossText: element('loss-text'),
  },
  () => void reloadPane(),
)
makeSplitter(element('splitter'), element('layout'))
element('close-welcome').addEventListener('click', () => {
  element('welcome').hidden = true
})
await reloadPane()
await connectFunctions(
  grid.api,
  bench,
  () => frame,
  () => page.functionPath,
)
page.functionsConnected = true
