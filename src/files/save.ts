import { open, readFile, realpath, rename, rm, stat } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { isMarkedCopy } from './copyMark'

/** What keeps a copy from being saved, as a sentence. */
export class NotSaved extends Error {}

/** What is saved beside a file: its word, and whether bytes are one as it was made, not saved by another program since. */
export interface Kind {
  readonly word: string
  readonly isAsMade: (bytes: Uint8Array) => boolean
}

const MARKED_COPY: Kind = { word: 'marked copy', isAsMade: isMarkedCopy }

/**
 * Refuses a place where something made from a file may not go: the file itself, under whatever name or link, and, without `force`, a file
 * that is not one of its kind as it was made. Throws NotSaved.
 */
export async function refusePlace(
  file: string,
  out: string,
  force: boolean,
  { word, isAsMade }: Kind = MARKED_COPY,
): Promise<void> {
  const [original, present] = await Promise.all([stat(file), stat(out).catch(() => null)])
  if (!present) return
  if (original.ino === present.ino && original.dev === present.dev)
    throw new NotSaved(`The ${word} needs a name of its own: the workbook itself is not changed.`)
  if (!present.isFile()) throw new NotSaved(`Cannot write ${out}: it is a folder or a device, not a file.`)
  if (force || isAsMade(await readFile(out).catch(() => new Uint8Array()))) return
  throw new NotSaved(
    `${out} is there already and is not a ${word} as it was made, so it is not replaced. Choose another name, or add --force to replace it.`,
  )
}

/**
 * Saves bytes under a name, whole or not at all: into a new file beside it, flushed to the disk, which then takes the name. A link
 * stays a link, and the file that it leads to is replaced. Throws NotSaved; then what was there is as it was.
 */
export async function saveWhole(out: string, bytes: Uint8Array): Promise<void> {
  const place = await realpath(out).catch(() => out)
  const beside = join(dirname(place), `.columnwise-${process.pid}-${Date.now()}.tmp`)
  try {
    const mode = await stat(place).then(
      (present) => present.mode & 0o777,
      () => 0o666,
    )
    const file = await open(beside, 'wx', mode)
    try {
      await file.writeFile(bytes)
      await file.sync()
    } finally {
      await file.close()
    }
    await rename(beside, place)
  } catch {
    await rm(beside, { force: true })
    throw new NotSaved(`Cannot write ${out}: the folder is not there, is full or may not be written to.`)
  }
}
