import { pathToFileURL } from 'node:url'
import { Worker } from 'node:worker_threads'

/** What a program may keep in mind, in MB; strings and objects, not the bytes of files. */
const MEMORY = 640

/**
 * Runs the program that was started anew in a thread of its own, and ends it with one line and exit 2 where it takes too long or too much
 * memory: whatever a file was made for, the machine stays usable. Reading a file has limits of its own; this one stands behind them,
 * for what is done with the cells. The seconds are the processor's, so that a busy machine ends nothing early.
 */
export function runBounded(seconds: number): void {
  const thread = new Worker(new URL('thread.mjs', import.meta.url), {
    argv: process.argv.slice(2),
    workerData: pathToFileURL(process.argv[1] ?? '').href,
    resourceLimits: { maxOldGenerationSizeMb: MEMORY },
  })
  const watch = setInterval(() => {
    const { user, system } = process.cpuUsage()
    if (user + system > seconds * 1_000_000) stop(`${seconds} seconds of work`)
  }, 100)
  thread.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'ERR_WORKER_OUT_OF_MEMORY') stop(`${MEMORY} MB of memory`)
    throw error
  })
  thread.on('exit', (code) => {
    clearInterval(watch)
    process.exitCode = code
  })
}

function stop(limit: string): never {
  process.stderr.write(
    `This would take more than ${limit}, so nothing was done. Keep the marksheet in a workbook of its own.\n`,
  )
  process.exit(2)
}
