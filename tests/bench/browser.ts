import { buffer } from 'node:stream/consumers'
import { chromium } from 'playwright-core'
import type { Browser, BrowserServer, Download, Page } from 'playwright-core'
import { findChromium } from '../setup/chromium'

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

/** How Chromium is started. Throws a sentence where there is none. */
function options(): { readonly executablePath: string; readonly args: string[] } {
  const executablePath = findChromium()
  if (executablePath === null)
    throw new Error(
      'No Chromium found. Install one, or set CHROMIUM_PATH to the program of a Chromium or Chrome.',
    )
  return { executablePath, args: QUIET }
}

/** Starts Chromium without a window. Throws a sentence where there is none. */
export const startBrowser = (): Promise<Browser> => chromium.launch(options())

/** Starts a Chromium that other processes connect to. Throws a sentence where there is none. */
export const startBrowserServer = (): Promise<BrowserServer> => chromium.launchServer(options())

/** Connects to a Chromium that has been started, by its address; closing the connection closes its pages alone. */
export const connectBrowser = (address: string): Promise<Browser> => chromium.connect(address)

/** What was downloaded; a browser of another process keeps its files to itself. */
export const bytesOf = async (download: Download): Promise<Buffer> =>
  buffer(await download.createReadStream())

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
