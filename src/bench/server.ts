import { readFile } from 'node:fs/promises'
import { createServer } from 'node:http'
import type { ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import path from 'node:path'

/** Folders that the bench is served from. */
export interface BenchFolders {
  /** The built add-in, or a page of the same shape. */
  readonly addin: string
  /** The built bench. */
  readonly bench: string
}

/** A bench that is being served. */
export interface BenchServer {
  /** Where its page is. */
  readonly url: string
  readonly close: () => Promise<void>
}

const LOOPBACK = '127.0.0.1'
const BENCH = '/bench/'
const OFFICE_FOLDER = 'office'
/** The address that release builds load the client library from; here its copy takes its place. */
const HOSTED_OFFICE = 'https://appsforoffice.microsoft.com/lib/1/hosted/'
/** Makes the add-in's window ready before office.js, which follows unmodified; a window that the add-in opens is none. */
const INSTALL = 'parent.columnwiseBench?.install(window);\n'

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.md': 'text/plain; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.xml': 'application/xml; charset=utf-8',
}

/** Nothing but this server may be asked for anything. */
const POLICY = [
  "default-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "worker-src 'self' blob:",
  "object-src 'none'",
  "base-uri 'self'",
  "form-action 'self'",
  "frame-ancestors 'self'",
].join('; ')

/** A file of a folder, or null where there is none; a path cannot lead out of the folder. */
async function fileOf(folder: string, relative: string): Promise<Buffer | null> {
  const file = path.join(folder, path.normalize(path.join('/', relative)))
  try {
    return await readFile(file)
  } catch {
    return null
  }
}

/** What is served at a path. */
async function contentOf({ addin, bench }: BenchFolders, pathname: string): Promise<Buffer | null> {
  if (pathname.startsWith(BENCH)) return fileOf(bench, pathname.slice(BENCH.length) || 'index.html')
  const ours = await fileOf(addin, pathname)
  if (pathname.endsWith('/office.js')) {
    const office = ours ?? (await fileOf(bench, `${OFFICE_FOLDER}/office.js`))
    return office && Buffer.concat([Buffer.from(INSTALL), office])
  }
  if (pathname.endsWith('.html') && ours?.includes(HOSTED_OFFICE))
    return Buffer.from(ours.toString().replaceAll(HOSTED_OFFICE, `${OFFICE_FOLDER}/`))
  return ours ?? (pathname.startsWith(`/${OFFICE_FOLDER}/`) ? fileOf(bench, pathname) : null)
}

async function answer(
  folders: BenchFolders,
  url: string,
  head: boolean,
  response: ServerResponse,
): Promise<void> {
  const pathname = decodeURIComponent(new URL(url, `http://${LOOPBACK}`).pathname)
  response.setHeader('Content-Security-Policy', POLICY)
  response.setHeader('Cache-Control', 'no-cache')
  response.setHeader('X-Content-Type-Options', 'nosniff')
  if (pathname === '/') {
    response.writeHead(302, { Location: BENCH }).end()
    return
  }
  const content = await contentOf(folders, pathname)
  if (!content) {
    response
      .writeHead(404, { 'Content-Type': 'text/plain; charset=utf-8' })
      .end(`There is no ${pathname} here.\n`)
    return
  }
  const extension = path.extname(pathname) || '.html'
  response.writeHead(200, { 'Content-Type': TYPES[extension] ?? 'application/octet-stream' })
  response.end(head ? undefined : content)
}

/** Serves the add-in and the bench on this computer alone; port 0 takes any free one. */
export async function serveBench(folders: BenchFolders, port = 0): Promise<BenchServer> {
  const server = createServer((request, response) => {
    answer(folders, request.url ?? '/', request.method === 'HEAD', response).catch((error: unknown) => {
      response.writeHead(400, { 'Content-Type': 'text/plain; charset=utf-8' }).end(`${String(error)}\n`)
    })
  })
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(port, LOOPBACK, resolve)
  })
  const { port: taken } = server.address() as AddressInfo
  return {
    url: `http://${LOOPBACK}:${taken}${BENCH}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => {
          resolve()
        })
        server.closeAllConnections()
      }),
  }
}
