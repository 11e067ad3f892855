import { codeOf, Problem, problemOf, Stopped } from './errors'
import { askAll, NotMerged, UNWATCHED, writeAll, type Part, type Work } from './work'

/** Parts to ask for together; worked out only when their turn comes, since they may build on what was loaded before. */
export type Round = () => readonly Part[]

/**
 * A change to the workbook that can be taken back. Its rounds are asked for in their order: `keep` loads what will be changed, `check`
 * refuses with a Problem what cannot be done, `write` changes, `verify` refuses what Excel has not taken, `look` loads how things stand now, and `putBack` gives back what was
 * kept, except where somebody else has changed it since, and says so in sentences.
 */
export interface Edit {
  /** What it changes, as the end of a sentence: "the colours on Heron". */
  readonly what: string
  readonly keep: readonly Round[]
  check(): void
  readonly write: Round
  verify?(): void
  /** Sentences on what was left out. */
  told?(): readonly string[]
  readonly look: readonly Round[]
  readonly putBack: Round
  left(): readonly string[]
}

/** Something that was written and can be taken back. `title` completes "Undo: …"; `told` are sentences on what was left out. */
export interface Done {
  readonly title: string
  readonly edits: readonly Edit[]
  readonly told?: readonly string[]
}

/**
 * Carries out changes together: keeps, checks, writes. A request is no transaction, so where writing fails or is stopped, what was
 * written is put back; where that fails too, the Problem says what stayed. Where that was because Excel was to make one step of its own
 * undo of it, it is done anew without. Small changes take one request for each round of `keep` and
 * one to write.
 */
export async function perform(title: string, edits: readonly Edit[], work: Work = UNWATCHED): Promise<Done> {
  try {
    await rounds(edits, ({ keep }) => keep, work)
    for (const edit of edits) edit.check()
  } catch (error) {
    throw problemOf(error)
  }
  try {
    await writeAll(
      edits.flatMap((edit) => edit.write()),
      work,
      'Writing',
    )
    for (const edit of edits) edit.verify?.()
  } catch (error) {
    if (error instanceof NotMerged && (await isPutBack(edits.toReversed(), 1)))
      return perform(title, edits, work)
    throw await putBackAfter(edits, problemOf(error instanceof NotMerged ? error.cause : error))
  }
  return { title, edits, told: edits.flatMap((edit) => edit.told?.() ?? []) }
}

/**
 * Takes back what was done, the last change first. Gives sentences on what was left since it was changed or deleted meanwhile. Throws
 * Problem.
 */
export async function takeBack({ edits }: Done, work: Work = UNWATCHED): Promise<readonly string[]> {
  const back = edits.toReversed()
  let gone: readonly Edit[] = []
  try {
    gone = await putBackAllThere(back, work)
  } catch (error) {
    const { sentence, next } = problemOf(error)
    throw new Problem(
      `${sentence} Not everything could be taken back.`,
      `${next} Then press Undo again.`.trim(),
      { cause: error },
    )
  }
  const left = back.filter((edit) => !gone.includes(edit)).flatMap((edit) => edit.left())
  return gone.length === 0
    ? left
    : [...left, `Not there any more: ${gone.map(({ what }) => what).join('; ')}.`]
}

/** Puts back what is still there, and gives the edits whose sheet is gone. */
async function putBackAllThere(edits: readonly Edit[], work: Work): Promise<readonly Edit[]> {
  try {
    await putBackAll(edits, work)
    return []
  } catch (error) {
    if (!isGone(error)) throw error
  }
  const gone: Edit[] = []
  for (const edit of edits)
    await putBackAll([edit], work).catch((error: unknown) => {
      if (!isGone(error)) throw error
      gone.push(edit)
    })
  return gone
}

const isGone = (error: unknown) => codeOf(error) === 'ItemNotFound'

async function putBackAll(edits: readonly Edit[], work: Work): Promise<void> {
  await rounds(edits, ({ look }) => look, work)
  const parts = edits.flatMap((edit) => edit.putBack())
  try {
    await writeAll(parts, work, 'Putting back')
  } catch (error) {
    if (!(error instanceof NotMerged)) throw error
    await putBackAll(edits, work)
  }
}

/** How often putting back is tried before the teacher is told what stayed. */
const TRIES = 2

async function putBackAfter(edits: readonly Edit[], problem: Problem): Promise<Problem> {
  const back = edits.toReversed()
  const stayed: string[] = []
  if (!(await isPutBack(back, 1)))
    for (const edit of back) if (!(await isPutBack([edit], TRIES))) stayed.unshift(edit.what)
  if (stayed.length === 0) {
    const left = back.flatMap((edit) => edit.left())
    if (left.length === 0 && problem instanceof Stopped) return problem
    const outcome = left.length === 0 ? 'Nothing was changed.' : left.join(' ')
    return new Problem(`${problem.sentence} ${outcome}`, problem.next, { cause: problem.cause })
  }
  return new Problem(
    `${problem.sentence} Some of it may have been written and could not be put back: ${stayed.join('; ')}.`,
    problem.next,
    { cause: problem.cause },
  )
}

async function isPutBack(edits: readonly Edit[], tries: number): Promise<boolean> {
  try {
    await putBackAll(edits, UNWATCHED)
    return true
  } catch {
    return tries > 1 && isPutBack(edits, tries - 1)
  }
}

/** Asks for the first rounds of all edits together, then for their second ones, and so on. */
async function rounds(
  edits: readonly Edit[],
  of: (edit: Edit) => readonly Round[],
  work: Work,
): Promise<void> {
  const most = Math.max(0, ...edits.map((edit) => of(edit).length))
  for (let turn = 0; turn < most; turn++)
    await askAll(
      edits.flatMap((edit) => of(edit)[turn]?.() ?? []),
      work,
      'Reading',
    )
}
