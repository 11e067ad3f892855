import { describe, expect, it } from 'vitest'
import { FAULTS, type FaultId } from '../../../src/answers/faults'
import { workOut } from '../../../src/arithmetic/columns'
import { familyOf } from '../../../src/arithmetic/families'
import { exchangesOf } from '../../../src/arithmetic/exchange'
import { valueText } from '../../../src/arithmetic/numeral'
import { printQuestion, type Question } from '../../../src/arithmetic/question'
import { diagnosedPupils, faultGroups, workAgainst, workAtType } from '../../../src/marksheet/reports/needs'
import { faultyAnswer, followUpFor, nextSetAgainst, nextSetFor } from '../../../src/marksheet/setting/nextSet'
import { review } from '../../../src/marksheet/marking/review'
import { asked } from '../../support/asked'

const rightTo = ({ calculation }: Question) => valueText(workOut(calculation).answer)
const typeOf = ({ calculation }: Question) => exchangesOf(workOut(calculation)).type
const ASKED = ['874 − 523', '932 − 457', '764 − 239', '681 − 357', '503 − 46', '305 − 128', '958 − 216'].map(
  asked,
)

/** A marksheet on which every pupil works with the fault given (null for none). */
function classOf(pupils: Readonly<Record<string, FaultId | null>>, asked: readonly Question[] = ASKED) {
  const rows = Object.entries(pupils).map(([name, fault]) => [
    name,
    ...asked.map((question) => (fault === null ? rightTo(question) : faultyAnswer(fault, question))),
  ])
  return review({ name: 'Heron', values: [['Name', ...asked.map(printQuestion)], ...rows] })
}

describe('a pupil whose fault is named', () => {
  it('needs work on the fault, with its evidence; types keep to their counts', () => {
    const [pupil] = diagnosedPupils(classOf({ 'Amina K': 'takes-smaller-from-larger', 'Bryn T': null }))
    expect(pupil?.judgement.need).toEqual({
      kind: 'fault',
      fault: 'takes-smaller-from-larger',
      family: null,
      type: null,
      sentence:
        'takes the smaller digit from the larger in every column, whichever is on top: 5 of 5 wrong answers',
    })
    expect(pupil?.judgement.needsSupport).toBe(true)
    const standing = (type: string) => pupil?.judgement.byType.find((each) => each.type === type)
    expect(standing('no exchange')).toMatchObject({ right: 2, tried: 2, status: 'secure' })
    expect(standing('one exchange, tens to ones')).toMatchObject({
      right: 0,
      tried: 2,
      status: 'needs support',
    })
  })

  it('is judged once: the diagnosed pupil holds the judgement of the review', () => {
    for (const { judgement, pupil } of diagnosedPupils(
      classOf({ 'Amina K': 'takes-smaller-from-larger', 'Bryn T': null }),
    ))
      expect(judgement).toBe(pupil.judgement)
  })
})

describe('groups by the same fault', () => {
  it('put pupils together for whom it is named, the commonest fault first, with the questions that show it', () => {
    const groups = faultGroups(
      diagnosedPupils(
        classOf({
          'Amina K': 'no-reduction',
          'Bryn T': 'takes-smaller-from-larger',
          'Cara O': null,
          'Dev R': 'takes-smaller-from-larger',
        }),
      ),
    )
    expect(groups.map(({ fault, pupils }) => [fault, pupils.map(({ name }) => name)])).toEqual([
      ['takes-smaller-from-larger', ['Bryn T', 'Dev R']],
      ['no-reduction', ['Amina K']],
    ])
    expect(groups[0]?.shownBy).not.toContain('874 − 523')
    expect(groups[0]?.shownBy).toContain('932 − 457')
  })
})

describe('next sets', () => {
  const wish = { count: 6, like: ASKED, seed: 'a week' }

  it('for a type look like what was asked, repeat nothing, and are the same for the same seed', () => {
    const set = nextSetFor('one exchange, tens to ones', wish)
    if ('problem' in set) throw new Error(set.problem)
    expect(set.questions.map(typeOf)).toEqual(Array(6).fill('one exchange, tens to ones'))
    const printed = set.questions.map(printQuestion)
    expect(new Set([...printed, ...ASKED.map(printQuestion)]).size).toBe(6 + ASKED.length)
    expect(printed.every((text) => /^\d{3} − \d{3}$/.test(text))).toBe(true)
    expect(nextSetFor('one exchange, tens to ones', wish)).toEqual(set)
  })

  it('for a type that was not asked come from the recipes', () => {
    const set = nextSetFor('one carry, ones to tens', wish)
    expect('questions' in set && set.questions.map(typeOf)).toEqual(Array(6).fill('one carry, ones to tens'))
  })

  it.each([...new Set(FAULTS.map(({ id }) => id))])(
    'against %s hold only questions that it gets wrong',
    (fault) => {
      const operation = FAULTS.find(({ id }) => id === fault)?.operation
      const like = operation === 'add' ? ['467 + 258', '78.5 + 6.42'].map(asked) : ASKED
      const set = nextSetAgainst(fault, { ...wish, like })
      if ('problem' in set) {
        // Whole numbers only were asked, and Year 4 lines decimals of one length up.
        expect(fault).toBe('lines-up-right')
        return
      }
      expect(set.questions.length).toBe(6)
      for (const question of set.questions) expect(faultyAnswer(fault, question)).not.toBe(rightTo(question))
    },
  )

  it('against a misread sign have both signs by turns, of the types that were asked where they were', () => {
    const set = nextSetAgainst('wrong-operation', wish)
    if ('problem' in set) throw new Error(set.problem)
    expect(set.questions.map(({ sign }) => sign)).toEqual(
      Array.from({ length: 6 }, (_, index) => (index % 2 === 0 ? 'subtract' : 'add')),
    )
    const asked = new Set(ASKED.map(typeOf))
    for (const question of set.questions)
      if (question.sign === 'subtract') expect(asked).toContain(typeOf(question))
  })

  it('against any fault hold two questions or more of every family, the example taken out', () => {
    for (const fault of new Set(FAULTS.map(({ id }) => id)))
      for (const count of [4, 5, 6, 8, 10]) {
        const operation = FAULTS.find(({ id }) => id === fault)?.operation
        const like = operation === 'add' ? ['467 + 258', '78.5 + 6.42'].map(asked) : ASKED
        const { questions } = workAgainst(fault, { ...wish, like, count })
        const families = questions.map((question) => familyOf(typeOf(question)))
        for (const family of families)
          expect([fault, count, families.filter((each) => each === family).length >= 2, families]).toEqual([
            fault,
            count,
            true,
            families,
          ])
      }
  })

  it('come with an example of their kind; against a fault with the answer that it gives', () => {
    const work = workAgainst('skips-over-zero', wish)
    expect(work.questions.length).toBe(6)
    expect(work.example?.answer).not.toBe(work.faulty)
    expect(work.example && faultyAnswer('skips-over-zero', work.example.question)).toBe(work.faulty)
    expect(workAtType('through a zero', wish)).toMatchObject({
      faulty: null,
      problem: null,
      example: { type: 'through a zero' },
    })
  })

  it('say why there are none', () => {
    const tiny = { ...wish, like: ['12 − 3'].map(asked), count: 1000 }
    expect(workAtType('one exchange, beyond ten thousands', tiny).problem).toMatch(/\.$/)
  })

  it('follow up an open diagnosis with questions to which its faults give different answers', () => {
    const open: FaultId[] = ['skips-over-zero', 'nine-for-free', 'zero-left-as-ten']
    const { questions, untold } = followUpFor(open, { ...wish, count: 4 })
    expect(questions.length).toBe(4)
    expect(untold).toEqual([])
    const answers = (fault: FaultId) => questions.map((question) => faultyAnswer(fault, question)).join()
    expect(new Set([...open.map(answers), questions.map(rightTo).join()]).size).toBe(4)
  })
})
