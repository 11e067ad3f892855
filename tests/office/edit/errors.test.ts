import { beforeAll, describe, expect, it } from 'vitest'
import { Problem, problemOf, Stopped, WORDS } from '../../../src/office/edit/errors'
import { benchWith } from '../host'

beforeAll(async () => {
  await benchWith({ name: 'S', values: [] })
})

/** What no sentence on screen may use: words of the trade of programmers. */
const JARGON = /\b(?:sync|range object|array|exception|null|undefined|API|payload|argument)\b/i

describe('every error code of the client library', () => {
  it('has a sentence and a next step in plain words', () => {
    for (const code of Object.values(Excel.ErrorCodes)) {
      const { sentence, next } = problemOf({ code })
      expect(WORDS, code).toHaveProperty(code)
      for (const words of [sentence, next]) {
        expect(words, code).toMatch(/^[A-Z].*[.?]$/)
        expect(words, code).not.toMatch(JARGON)
      }
    }
  })
})

describe('other errors', () => {
  it('become a sentence too, and keep their cause', () => {
    const error = new TypeError('x is not a function')
    expect(problemOf(error).sentence).toMatch(/did not expect/)
    expect(problemOf(error).cause).toBe(error)
    expect(problemOf('text')).toBeInstanceOf(Problem)
    expect(problemOf(null)).toBeInstanceOf(Problem)
  })

  it('that are problems already stay what they are, and an aborted signal is a stop', () => {
    const problem = new Problem('No.', 'Do.')
    expect(problemOf(problem)).toBe(problem)
    expect(problemOf(new DOMException('aborted', 'AbortError'))).toBeInstanceOf(Stopped)
  })
})
