import { beforeAll, describe, expect, it } from 'vitest'
import { loadFunctions, type FunctionsHost } from './host'

let host: FunctionsHost
beforeAll(async () => {
  host = await loadFunctions()
})

/** Calls of every kind: values, ranges, errors alone and among others, nothing, parameters left out. */
const CALLS: readonly [id: string, args: readonly unknown[]][] = [
  [
    'ANSWER',
    [
      [
        ['932 − 457', 'Name'],
        ['', '12 − 12'],
      ],
    ],
  ],
  ['ANSWER', [[['Name']]]],
  ['EXCHANGES', [[['874 − 523']]]],
  ['TYPE', [[['305 − 128']]]],
  ['SKILLS', [[['305 − 128']]]],
  ['STRATEGY', [[['2003 − 1998']]]],
  ['STEPS', ['305 − 128']],
  ['STEPS', ['Name']],
  ['LAYOUT', ['789 + 642']],
  ['LAYOUT', [null]],
  [
    'MARK',
    [
      [['932 − 457', '305 − 128']],
      [
        ['475', ''],
        ['525', 'abs'],
      ],
    ],
  ],
  ['MARK', [[['1 + 1', '1 + 2']], [[2], [3]]]],
  ['WHY', [[['932 − 457']], [['525'], ['475']]]],
  ['MASTERY', [[['932 − 457', '305 − 128']], [['475', '177']], null]],
  [
    'SUPPORT',
    [
      [['932 − 457', '845 − 367']],
      [
        ['525', '522'],
        ['475', '478'],
      ],
    ],
  ],
  ['QUESTIONS', ['through a zero', 3, 3, 4, 'Monday', true]],
  ['QUESTIONS', ['through a zero', 2, 2, null, null, null]],
]

describe('through the client library, by the event that Excel sends', () => {
  it('every function gives what it gives when called directly, the sentence of an error with it', async () => {
    const [through, direct] = await Promise.all([
      Promise.all(CALLS.map(([id, args]) => host.bench.callCustomFunction(id, args))),
      Promise.all(CALLS.map(([id, args]) => host.call(id, ...args))),
    ])
    expect(through).toEqual(direct)
    expect(through.filter(({ message }) => message !== undefined).length).toBe(4)
    expect(new Set(CALLS.map(([id]) => id)).size).toBe(host.functions.length)
  })

  it('nothing is ever null or missing, which a cell would show as 0', async () => {
    for (const [id, args] of CALLS) {
      const body = host.registered[id]
      const cells = await Promise.resolve()
        .then(() => body?.(...args))
        .catch((error: unknown) => [[error]])
      for (const cell of (cells as unknown[][]).flat()) expect(cell ?? 'missing').not.toBe('missing')
    }
  })
})
