import { readFile } from 'node:fs/promises'
import { basename } from 'node:path'
import { isMainThread } from 'node:worker_threads'
import type { Matrix } from '../marksheet/layout/matrix'
import { runBounded } from './bounded'
import { matrixOf } from './matrix'
import { NotSaved } from './save'
import { visible } from './visible'
import { Unreadable } from './xlsx/unreadable'
import { readWorkbook } from './xlsx/workbook'

/** A file's bytes; ends the program with a sentence where it cannot be opened. */
export function bytesOf(file: string): Promise<Uint8Array> {
  return readFile(file).catch(() =>
    fail(`Cannot read ${file}: there is no such file, or it may not be opened.`),
  )
}

/** A workbook's worksheets, from the bytes of the file; ends the program with a sentence where they are none. Says what was left out. */
export async function sheetsOf(bytes: Uint8Array, file: string): Promise<Matrix[]> {
  const workbook = await readWorkbook(bytes).catch((error: unknown) =>
    error instanceof Unreadable ? fail(`Cannot read ${basename(file)}: ${error.message}`) : raise(error),
  )
  return workbook.map(matrixOf).map(({ matrix, told }) => {
    for (const sentence of told) say(sentence)
    return matrix
  })
}

/** Ends the program with the sentence that says why nothing was saved; throws any other error on. */
export function failNotSaved(error: unknown): never {
  return error instanceof NotSaved ? fail(error.message) : raise(error)
}

/** Says a sentence to who runs the program. */
export function say(sentence: string): void {
  process.stderr.write(`${visible(sentence)}\n`)
}

/** Says a sentence and ends the program. */
export function fail(sentence: string): never {
  say(sentence)
  process.exit(2)
}

/**
 * Runs a program of the command line, with bounds for the seconds of the processor and the memory that it takes. A reader that wants no
 * more, like `head`, closes the pipe: that is no fault.
 */
export async function run(main: () => Promise<void>, seconds: number): Promise<void> {
  if (!isMainThread) return main()
  process.stdout.on('error', ({ code }: NodeJS.ErrnoException) => process.exit(code === 'EPIPE' ? 0 : 2))
  runBounded(seconds)
}

function raise(error: unknown): never {
  throw error
}
