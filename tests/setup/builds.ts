import { execFile } from 'node:child_process'
import { mkdir, readdir, readFile, stat, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { promisify } from 'node:util'
import webpack from 'webpack'
import { benchConfig } from '../../src/bench/webpack'

/** The address that one of the builds is for. */
export const HOST = 'https://school.example/columnwise'

const CACHE = path.resolve('.cache/builds')
const SOURCES = [
  'src',
  'taskpane',
  'webpack.config.js',
  'manifest.xml',
  'package-lock.json',
  import.meta.filename,
]

/** Folders of what is built. */
export interface Builds {
  /** The add-in as `npm run build` makes it. */
  readonly addin: string
  /** The add-in for HOST. */
  readonly hosted: string
  /** The add-in for a closed network, with its own copy of the client library. */
  readonly local: string
  /** The add-in for a volunteer's trial in Excel, with the host checks. */
  readonly trial: string
  readonly bench: string
}

/** Builds all that tests look at, once for a run; not again while no source is newer. */
export async function builds(): Promise<Builds> {
  await mkdir(CACHE, { recursive: true })
  const [addin, hosted, local, trial, bench] = ['addin', 'hosted', 'local', 'trial', 'bench'].map((name) =>
    path.join(CACHE, name),
  ) as [string, string, string, string, string]
  const stamp = path.join(CACHE, 'newest')
  const newest = String(Math.max(...(await Promise.all(SOURCES.map(newestIn)))))
  if ((await readFile(stamp, 'utf8').catch(() => '')) !== newest) {
    // The first build fills webpack's cache for the others.
    await Promise.all([buildAddin(addin), buildBench(bench)])
    await Promise.all([buildAddin(hosted, `base=${HOST}`), buildAddin(local, 'officejs=local')])
    await buildAddin(trial, `base=${HOST}`, 'checks=yes')
    await writeFile(stamp, newest)
  }
  return { addin, hosted, local, trial, bench }
}

/** Builds the add-in into a folder, as `npm run build` does. Throws with webpack's output where that fails. */
export async function buildAddin(folder: string, ...env: readonly string[]): Promise<void> {
  const options = ['--mode', 'production', '--output-path', folder, ...env.flatMap((one) => ['--env', one])]
  await promisify(execFile)(process.execPath, ['node_modules/webpack/bin/webpack.js', ...options])
}

function buildBench(folder: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const compiler = webpack(benchConfig({ folder }))
    compiler?.run((error, stats) => {
      compiler.close(() => {
        if (error) reject(error)
        else if (stats?.hasErrors()) reject(new Error(stats.toString({ preset: 'errors-only' })))
        else resolve()
      })
    })
  })
}

/** When anything in a file or folder was last changed, in milliseconds. */
async function newestIn(place: string): Promise<number> {
  const { mtimeMs } = await stat(place)
  const entries = (await stat(place)).isDirectory() ? await readdir(place) : []
  const within = await Promise.all(entries.map((entry) => newestIn(path.join(place, entry))))
  return Math.max(mtimeMs, ...within)
}
