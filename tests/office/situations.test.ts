import { afterAll, describe, expect, it } from 'vitest'
import type { Bench } from '../../src/bench/bench'
import type { Fault } from '../../src/bench/host/faults'
import { takeBack, type Done } from '../../src/office/edit/edit'
import { Problem } from '../../src/office/edit/errors'
import { ACTIONS, owls, type Action } from './actions'
import { countSyncs } from './host'
import { SITUATIONS, type Situation } from './situations'
import { differences, pictureOf } from './workbookPicture'

/** The cases that were gone through; printed at the end, for DEVELOPERS.md. */
let cases = 0

afterAll(() => {
  console.log(`${cases.toLocaleString('en-GB')} cases of writing actions gone through`)
})

async function ready({ before }: Action): Promise<Bench> {
  const bench = await owls()
  await before()
  return bench
}

/** What comes of a promise: what it gives, or the Problem with which it fails; any other error fails the test. */
async function outcomeOf<T>(promise: Promise<T>): Promise<T | Problem> {
  try {
    return await promise
  } catch (error) {
    if (error instanceof Problem) return error
    throw error
  }
}

/** A sentence that says that something stayed. */
const STAYED = /could not be put back|may be off|Already deleted|stayed|may be deleted/

/** A problem in a teacher's words. */
function expectClear({ sentence, next }: Problem): void {
  expect(sentence).toMatch(/^[A-Z].*\.$/)
  expect(sentence).not.toMatch(/did not expect/)
  expect(next).toMatch(/^[A-Z].*\.$/)
}

/** How far the requests of an action go: how many, those that only read included. */
async function requestsOf(action: Action): Promise<number> {
  const bench = await ready(action)
  const write = await action.read()
  const syncs = countSyncs(bench)
  await write()
  return syncs()
}

const CODES = ['ItemNotFound', 'InvalidArgument', 'AccessDenied', 'RequestAborted'] as const
const STEPS = [1, 2, 3, 5, 8, 13, 21, 34, 55, 89] as const

/** Every request failing at its start with every code, after some of its steps, and done but with its answer lost. */
function faultsIn(requests: number): Fault[] {
  return Array.from({ length: requests }, (_, index) => index + 1).flatMap((sync) => [
    ...CODES.map((code) => ({ sync, code })),
    ...STEPS.map((after) => ({ sync, code: 'GeneralException', after })),
    { sync, code: 'RequestAborted', lost: true },
  ])
}

describe.each(ACTIONS)('$name', (action) => {
  it('is taken back by Undo to what was there', async () => {
    const bench = await ready(action)
    const write = await action.read()
    const then = pictureOf(bench)
    const done = await write()
    expect(pictureOf(bench)).not.toEqual(then)
    cases++
    expect(await takeBack(done)).toEqual([])
    if (!action.forGood) expect(differences(then, pictureOf(bench))).toEqual([])
  })

  it('leaves the workbook as it was, or says what stayed, whichever request fails or gets lost', async () => {
    for (const fault of faultsIn(await requestsOf(action))) {
      const bench = await ready(action)
      const write = await action.read()
      const then = pictureOf(bench)
      bench.host.failAt(fault)
      const outcome = await outcomeOf(write())
      cases++
      if (!(outcome instanceof Problem)) continue
      expectClear(outcome)
      const changed = differences(then, pictureOf(bench))
      if (action.forGood && STAYED.test(outcome.sentence)) continue
      expect([fault, changed]).toEqual([fault, []])
      expect([fault, outcome.sentence]).not.toEqual([fault, expect.stringMatching(STAYED)])
    }
  })

  it('says what may have stayed where putting back fails too', async () => {
    const requests = await requestsOf(action)
    for (const after of [1, 5, 21]) {
      const bench = await ready(action)
      const write = await action.read()
      const then = pictureOf(bench)
      bench.host.failAt({ sync: requests, code: 'GeneralException', after })
      for (let later = 1; later <= 80; later++)
        bench.host.failAt({ sync: requests + later, code: 'RequestAborted' })
      const outcome = await outcomeOf(write())
      cases++
      if (!(outcome instanceof Problem)) continue
      if (differences(then, pictureOf(bench)).length > 0) expect(outcome.sentence).toMatch(STAYED)
    }
  })

  it('can be taken back by a second Undo where the first fails anywhere', async () => {
    const bench = await ready(action)
    const done = await (await action.read())()
    const syncs = countSyncs(bench)
    await takeBack(done)
    const requests = syncs()
    for (const fault of faultsIn(requests)) {
      if (action.forGood) continue
      const again = await ready(action)
      const write = await action.read()
      const then = pictureOf(again)
      const written = await write()
      again.host.failAt(fault)
      const outcome = await outcomeOf(takeBack(written))
      cases++
      if (outcome instanceof Problem) {
        expect(outcome.sentence).toMatch(/Not everything could be taken back/)
        expect([fault, await takeBack(written)]).toEqual([fault, []])
      }
      expect([fault, differences(then, pictureOf(again))]).toEqual([fault, []])
    }
  })

  it.each(SITUATIONS)('is done and undone, or refused with nothing changed, where $name', (situation) =>
    goThrough(action, situation),
  )
})

async function goThrough(action: Action, situation: Situation): Promise<void> {
  const bench = await ready(action)
  if (situation.before?.(bench, action) === false) return
  const start = pictureOf(bench)
  const write = await outcomeOf(action.read())
  if (write instanceof Problem) {
    cases++
    expectClear(write)
    expect(differences(start, pictureOf(bench))).toEqual([])
    return
  }
  if (situation.between?.(bench, action) === false) return
  const then = pictureOf(bench)
  const outcome = await outcomeOf(write())
  if (outcome instanceof Problem) {
    situation.back?.(bench)
    cases++
    expectClear(outcome)
    expect([outcome.sentence, differences(then, pictureOf(bench))]).toEqual([outcome.sentence, []])
    expect([outcome.sentence, STAYED.test(outcome.sentence)]).toEqual([outcome.sentence, false])
    return
  }
  expect(situation.refuses).toBeUndefined()
  const written = pictureOf(bench)
  if (situation.after?.(bench, action) === false) return
  cases++
  await undo(bench, action, situation, outcome, then, written)
}

type Picture = ReturnType<typeof pictureOf>

/** Everything that was written by somebody else since must be there after Undo; all else as it was, or told. */
async function undo(
  bench: Bench,
  action: Action,
  situation: Situation,
  done: Done,
  then: Picture,
  written: Picture,
): Promise<void> {
  const now = pictureOf(bench)
  let left = await outcomeOf(takeBack(done))
  if (left instanceof Problem) {
    expectClear(left)
    situation.back?.(bench)
    left = await takeBack(done)
  } else situation.back?.(bench)
  if (action.forGood) return
  const theirs = differences(written, now)
  const after = differences(then, pictureOf(bench))
  const told = left.length > 0 || theirs.length > 0
  if (!told) expect(after).toEqual([])
  for (const word of ['somebody’s', 'beside', 'far below'])
    if (JSON.stringify(now).includes(word)) expect(JSON.stringify(pictureOf(bench))).toContain(word)
}
