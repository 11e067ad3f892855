import fs from 'node:fs'
import path from 'node:path'
import { createRequire } from 'node:module'
import vm from 'node:vm'
import { Bench } from './bench'
import type { BenchOptions } from './bench'
import { Transport } from './host/transport'

const OFFICE = path.dirname(createRequire(import.meta.url).resolve('@microsoft/office-js/dist/office.js'))
const BASE = 'http://localhost/office/'

/** As much of a script element as office.js touches. */
interface ScriptElement {
  src?: string
  readyState?: string
  onload?: () => void
}

let transport: Transport | undefined
let loading: Promise<unknown> | undefined

/**
 * A fresh bench behind the real, unmodified office.js, which is loaded once in this realm. `globalThis` plays the
 * window: `Office`, `Excel` and `CustomFunctions` are there when this resolves.
 */
export async function startBench(options: Omit<BenchOptions, 'transport'> = {}): Promise<Bench> {
  transport ??= new Transport()
  const bench = new Bench({ ...options, transport })
  transport.stats = { requests: 0, actions: 0, bytesIn: 0, bytesOut: 0 }
  loading ??= loadOffice(bench)
  await loading
  return bench
}

async function loadOffice(bench: Bench): Promise<void> {
  const run = (file: string): void => {
    vm.runInThisContext(fs.readFileSync(path.join(OFFICE, file), 'utf8'), { filename: file })
  }
  pretendWindow((script) => {
    const { src } = script
    if (src?.startsWith(BASE) !== true) return
    setTimeout(() => {
      run(src.slice(BASE.length))
      script.readyState = 'complete'
      script.onload?.()
    }, 0)
  })
  bench.install(globalThis)
  run('office.js')
  await Office.onReady()
  await bench.customFunctionsReady
  mergeRuns()
}

/** Has runs with `mergeUndoGroup` merged, which the library on npm does not know yet; whoever claims ExcelApi 1.20 gets what it promises. */
function mergeRuns(): void {
  const run = Excel.run as (...args: unknown[]) => Promise<unknown>
  const merging = (...args: unknown[]) => {
    const [options] = args as [Excel.RunOptions | undefined]
    const undo = transport?.endpoint?.book.undo
    return undo && options?.mergeUndoGroup === true ? undo.merged(() => run(...args)) : run(...args)
  }
  Object.assign(Excel, { run: merging })
}

/** Gives `globalThis` as much of a browser's window as office.js needs to start. */
function pretendWindow(append: (script: ScriptElement) => void): void {
  const nothing = () => undefined
  const element = () => ({
    style: {},
    setAttribute: nothing,
    getAttribute: () => null,
    appendChild: append,
  })
  const script = { src: `${BASE}office.js`, getAttribute: () => null }
  const page = {
    readyState: 'complete',
    addEventListener: nothing,
    createElement: element,
    body: element(),
    documentElement: element(),
    head: element(),
    getElementsByTagName: (tag: string) => (tag === 'script' ? [script] : [element()]),
  }
  const globals = {
    location: {
      search: '',
      hash: '',
      href: BASE,
      protocol: 'http:',
      origin: 'http://localhost',
      hostname: 'localhost',
    },
    navigator: { userAgent: 'bench', platform: 'Win32' },
    sessionStorage: storage(),
    localStorage: storage(),
    window: globalThis,
    self: globalThis,
    top: globalThis,
    parent: globalThis,
    name: '',
    history: {},
    addEventListener: nothing,
    removeEventListener: nothing,
    postMessage: nothing,
    document: page,
  }
  for (const [name, value] of Object.entries(globals))
    Object.defineProperty(globalThis, name, { value, configurable: true, writable: true })
}

function storage() {
  const kept = new Map<string, string>()
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
    removeItem: (key: string) => kept.delete(key),
    get length() {
      return kept.size
    },
  }
}
