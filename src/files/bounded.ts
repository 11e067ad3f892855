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
  const program = pathToFileURL(process.argv[1] ?? '').href
  // A thread does not take over the loader of TypeScript.
  const start = `import('tsx/esm/api').then(({ register }) => { register(); return import(${JSON.stringify(program)}) })`
  const resourceLimits = { maxOldGenerationSizeMb: MEMORY }
  const thread = new Worker(start, { eval: true, argv: process.argv.slice(2), resourceLimits })
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
