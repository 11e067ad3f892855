import { execFile } from 'node:child_process'
import { mkdir, readdir, readFile, rmdir, stat, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { promisify } from 'node:util'
import { buildBench } from '../bench/build'

const CACHE = path.resolve('.cache')
const SOURCES = [
  'src',
  'taskpane',
  'webpack.config.js',
  'manifest.xml',
  'package-lock.json',
  'tests/bench/build.ts',
]
/** How long another process may build before it is taken for dead. */
const DEAD_AFTER = 300_000

/** The folders of the built add-in and the built bench; built anew only where a source is newer, once for all test files. */
export async function builds(): Promise<{ readonly addin: string; readonly bench: string }> {
  await mkdir(CACHE, { recursive: true })
  return locked(path.join(CACHE, 'browser.lock'), async () => {
    const stamp = path.join(CACHE, 'browser.stamp')
    const newest = String(Math.max(...(await Promise.all(SOURCES.map(newestIn)))))
    const addin = path.join(CACHE, 'addin-browser')
    const bench = path.join(CACHE, 'bench-browser')
    if ((await readFile(stamp, 'utf8').catch(() => '')) === newest) return { addin, bench }
    await promisify(execFile)(process.execPath, [
      'node_modules/webpack/bin/webpack.js',
      ...['--mode', 'production', '--output-path', addin],
    ])
    await buildBench('browser')
    await writeFile(stamp, newest)
    return { addin, bench }
  })
}

/** When anything in a file or folder was last changed, in milliseconds. */
async function newestIn(place: string): Promise<number> {
  const { mtimeMs } = await stat(place)
  const entries = (await stat(place)).isDirectory() ? await readdir(place) : []
  const within = await Promise.all(entries.map((entry) => newestIn(path.join(place, entry))))
  return Math.max(mtimeMs, ...within)
}

/** Does something while no other process holds the lock. */
async function locked<T>(lock: string, action: () => Promise<T>): Promise<T> {
  for (;;) {
    try {
      await mkdir(lock)
      break
    } catch {
      const age = await stat(lock).then(
        ({ mtimeMs }) => Date.now() - mtimeMs,
        () => 0,
      )
      if (age > DEAD_AFTER) await rmdir(lock).catch(() => undefined)
      else await new Promise((resolve) => setTimeout(resolve, 500))
    }
  }
  try {
    return await action()
  } finally {
    await rmdir(lock)
  }
}
