import { existsSync } from 'node:fs'
import { chromium } from 'playwright-core'
import type { Browser, Page } from 'playwright-core'

const USUAL_PATHS = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
]

/** Chromium asks nobody for anything by itself with these. */
const QUIET = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** Where Chromium is: CHROMIUM_PATH, or one of the usual paths. Throws a sentence where there is none. */
export function chromiumPath(): string {
  const path = process.env.CHROMIUM_PATH ?? USUAL_PATHS.find((usual) => existsSync(usual))
  if (path === undefined)
    throw new Error(
      'No Chromium found. Install one, or set CHROMIUM_PATH to the program of a Chromium or Chrome.',
    )
  if (!existsSync(path)) throw new Error(`CHROMIUM_PATH is ${path}, but there is no such program.`)
  return path
}

/** Starts Chromium without a window. */
export const startBrowser = (): Promise<Browser> =>
  chromium.launch({ executablePath: chromiumPath(), args: QUIET })

/** What a watched page has done that it should not. */
export interface Watch {
  /** Addresses asked for that are not on this computer. */
  readonly strayRequests: string[]
  /** Errors thrown on the page or written to its console. */
  readonly errors: string[]
}

const isLocal = (address: string): boolean => {
  const { protocol, hostname } = new URL(address)
  return (
    ['data:', 'blob:', 'about:'].includes(protocol) || ['127.0.0.1', 'localhost', '[::1]'].includes(hostname)
  )
}

/** Notes every request that leaves this computer, and every error. */
export function watch(page: Page): Watch {
  const watched: Watch = { strayRequests: [], errors: [] }
  page.on('request', (request) => {
    if (!isLocal(request.url())) watched.strayRequests.push(request.url())
  })
  page.on('websocket', (socket) => {
    if (!isLocal(socket.url().replace(/^ws/, 'http'))) watched.strayRequests.push(socket.url())
  })
  page.on('pageerror', (error) => watched.errors.push(error.stack ?? error.message))
  page.on('console', (message) => {
    if (message.type() === 'error') watched.errors.push(message.text())
  })
  return watched
}
