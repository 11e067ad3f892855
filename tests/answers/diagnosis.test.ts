import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  DIAGNOSIS_SETTINGS,
  faultsOfClass,
  likeliestFault,
  prepareDiagnosis,
  reachOf,
} from '../../src/answers/diagnosis'
import { accountsFor } from '../../src/answers/diagnosis/accounts'
import { posteriorFor } from '../../src/answers/diagnosis/posterior'
import { slipsOf } from '../../src/answers/diagnosis/slips'
import { answerWith, FAULTS, type Fault, type FaultId } from '../../src/answers/faults'
import type { Operation, Question } from '../../src/arithmetic/question'
import { generatorFrom } from '../../src/items/seed'
import { answersOf, sheetOf } from '../evidence/pupils'
import { CLASSES } from './data/classes'
import { asked } from '../support/asked'

const questionsOf = (...texts: string[]) => texts.map(asked)
const faultsOf = (...ids: FaultId[]) => FAULTS.filter(({ id }) => ids.includes(id))
const answers = (questions: readonly Question[], faults: readonly Fault[] = []) =>
  questions.map(({ calculation }) => answerWith(faults, calculation))
const wrongOn = (questions: readonly Question[], fault: Fault) =>
  answers(questions, [fault]).filter((answer, index) => answer !== answers(questions)[index]).length

const SHEET = questionsOf(
  '932 − 457',
  '305 − 128',
  '4003 − 1567',
  '5040 − 2308',
  '6105 − 2350',
  '8000 − 2999',
  '7214 − 86',
  '503 − 46',
  '874 − 523',
  '748 − 464',
)

describe('invented classes', () => {
  it.each(CLASSES.map(({ questions, pupils }) => [questions.length, questions, pupils] as const))(
    'of %i questions: names the fault first where two answers are exactly its own, and none for anybody else',
    (_, questions, pupils) => {
      const { diagnose } = prepareDiagnosis(questions)
      for (const { typed, fault } of pupils) {
        const [first, ...others] = diagnose(typed).named
        const own = questions.filter(({ calculation }, index) => {
          const given = typed[index]
          const faulty = answerWith(fault === null ? [] : faultsOf(fault as FaultId), calculation)
          return given === faulty && given !== answerWith([], calculation)
        })
        expect(first?.fault ?? null).toBe(own.length >= 2 ? fault : null)
        expect(others).toEqual([])
      }
    },
  )
})

describe('pupils made with one fault, 12 questions, one answer in twenty a slip', () => {
  it.each(FAULTS.map((fault) => [fault.operation, fault.id, fault] as const))(
    '%s, %s: named first for at least 90 of 100 where it shows on two questions or more',
    (operation, id, fault) => {
      const generator = generatorFrom(`profiles ${operation} ${id}`)
      let tried = 0
      let named = 0
      for (let sheet = 0; sheet < 40; sheet += 1) {
        const questions =
          id === 'lines-up-right' ? decimalSheet(operation) : sheetOf(generator, operation, 12)
        if (wrongOn(questions, fault) < 2) continue
        const { diagnose } = prepareDiagnosis(questions)
        for (let pupil = 0; pupil < 5; pupil += 1) {
          const [first] = diagnose(answersOf(generator, questions, [fault], 0.05)).named
          tried += 1
          named += Number(first !== undefined && [first.fault, ...first.alsoFits].includes(id))
        }
      }
      expect(tried).toBeGreaterThan(20)
      expect(named / tried).toBeGreaterThanOrEqual(0.9)
    },
  )

  function decimalSheet(operation: Operation): Question[] {
    const texts = ['8.6 − 2.35', '7.25 − 1.3', '9.4 − 2.15', '6.5 − 3.25', '12.5 − 3.4', '7.41 − 2.25']
    const all = [
      ...texts,
      '14.2 − 3.75',
      '9.61 − 4.2',
      '8.75 − 3.5',
      '5.2 − 1.1',
      '6.84 − 2.61',
      '4.75 − 1.5',
    ]
    return questionsOf(...all.map((text) => (operation === 'add' ? text.replace('−', '+') : text)))
  }
})

describe('pupils who use the right method', () => {
  it.each([0, 0.05, 0.1, 0.2])(
    'with slips at a rate of %d are named a fault in fewer than 1 of 100',
    (slip) => {
      for (const operation of ['add', 'subtract'] as const) {
        const generator = generatorFrom(`secure ${operation} ${slip}`)
        let named = 0
        for (let sheet = 0; sheet < 40; sheet += 1) {
          const questions = sheetOf(generator, operation, 12)
          const { diagnose } = prepareDiagnosis(questions)
          for (let pupil = 0; pupil < 50; pupil += 1)
            named += Number(diagnose(answersOf(generator, questions, [], slip)).named.length > 0)
        }
        expect(named / 2000).toBeLessThan(0.01)
      }
    },
  )
})

describe('the posterior', () => {
  it('is Bayes’ rule: prior times chances, over the sum, as worked out here by another way', () => {
    const questions = questionsOf('932 − 457', '874 − 523')
    const accounts = accountsFor(questions)
    const s = DIAGNOSIS_SETTINGS
    const typed = ['525', '352']
    const slipShare = (answer: string, given: string) => {
      const digits = [...answer]
      const near = digits.flatMap((digit, place) =>
        [Number(digit) - 1, Number(digit) + 1]
          .filter((other) => other >= 0 && other <= 9)
          .map((other) => String(Number(digits.with(place, String(other)).join('')))),
      )
      const swapped = [
        [1, 0, 2],
        [2, 1, 0],
        [0, 2, 1],
      ]
        .map((order) => order.map((place) => digits[place]).join(''))
        .filter((text) => text !== answer)
        .map((text) => String(Number(text)))
      expect(digits).toHaveLength(3)
      const part = (all: readonly string[]) => all.filter((text) => text === given).length / all.length
      return swapped.length === 0 ? part(near) : (1 - s.swapped) * part(near) + s.swapped * part(swapped)
    }
    const stray = (index: number, given: string) => {
      const faulty = new Set(accounts.map((account) => account.answers[index]))
      faulty.delete(accounts[0]?.answers[index])
      return (faulty.has(given) ? s.strayLikeFault / faulty.size : 0) + (1 - s.strayLikeFault) / 1000
    }
    const likelihood = (accountAnswers: readonly string[], slip: number) =>
      typed.reduce((product, given, index) => {
        const right = accounts[0]?.answers[index]
        const answer = accountAnswers[index] ?? ''
        const meant = (given === answer ? 1 - s.lapse : 0) + (given === right ? s.lapse : 0)
        const slipped = answer.length === 3 ? slipShare(answer, given) : 0
        return product * ((1 - slip - s.stray) * meant + slip * slipped + s.stray * stray(index, given))
      }, 1)
    const care = s.prior.careless / (s.prior.right + s.prior.careless)
    const singles = accounts.filter(({ ids }) => ids.length === 1)
    const weightOf = (id: FaultId | undefined) => (id && s.weight[id]) ?? 1
    const totalWeight = singles.reduce((sum, { ids }) => sum + weightOf(ids[0]), 0)
    const pairs = accounts.filter(({ ids }) => ids.length === 2).length
    const joint = accounts.map(({ ids, answers: given }) => {
      const prior = [
        s.prior.right + s.prior.careless,
        (s.prior.fault * weightOf(ids[0])) / totalWeight,
        s.prior.pair / pairs,
      ]
      return (
        (prior[ids.length] ?? 0) *
        ((1 - care) * likelihood(given, s.slip) + care * likelihood(given, s.carelessSlip))
      )
    })
    const unsystematic =
      s.prior.unsystematic *
      typed.reduce((product, given, index) => {
        const right = accounts[0]?.answers[index] ?? ''
        const wrong =
          s.unsystematicSlip * slipShare(right, given) + (1 - s.unsystematicSlip) * stray(index, given)
        return product * ((given === right ? s.unsystematicRight : 0) + (1 - s.unsystematicRight) * wrong)
      }, 1)
    const total = joint.reduce((sum, each) => sum + each, unsystematic)

    const posterior = posteriorFor(questions, accounts, s).posteriorOf(typed)
    expect(posterior.unsystematic).toBeCloseTo(unsystematic / total, 10)
    joint.forEach((each, index) => expect(posterior.accounts[index]).toBeCloseTo(each / total, 10))
  })

  it('adds up to 1 and does not depend on the order of the questions', () => {
    const typed = fc.tuple(
      ...SHEET.map(({ calculation }) =>
        fc.constantFrom(
          null,
          '7',
          answerWith([], calculation),
          answerWith(faultsOf('no-reduction'), calculation),
        ),
      ),
    )
    const accounts = accountsFor(SHEET)
    const forwards = posteriorFor(SHEET, accounts, DIAGNOSIS_SETTINGS).posteriorOf
    const turned = accounts.map((account) => ({ ...account, answers: account.answers.toReversed() }))
    const backwards = posteriorFor(SHEET.toReversed(), turned, DIAGNOSIS_SETTINGS).posteriorOf
    fc.assert(
      fc.property(typed, (given) => {
        const [one, other] = [forwards(given), backwards(given.toReversed())]
        expect(one.accounts.reduce((sum, each) => sum + each, one.unsystematic)).toBeCloseTo(1, 10)
        one.accounts.forEach((each, index) => expect(other.accounts[index]).toBeCloseTo(each, 10))
      }),
    )
  })

  it('is the prior where nothing was typed', () => {
    const nothing = SHEET.map(() => null)
    const { verdict, named } = prepareDiagnosis(SHEET).diagnose(nothing)
    const posterior = posteriorFor(SHEET, accountsFor(SHEET), DIAGNOSIS_SETTINGS).posteriorOf(nothing)
    const { right, careless, unsystematic, fault, pair } = DIAGNOSIS_SETTINGS.prior
    const all = right + careless + unsystematic + fault + pair
    expect(posterior.accounts[0]).toBeCloseTo((right + careless) / all, 10)
    expect(posterior.careless).toBeCloseTo(careless / all, 10)
    expect([verdict, named]).toEqual(['nothing to go on', []])
  })
})

describe('what is named', () => {
  const { diagnose } = prepareDiagnosis(SHEET)

  it('is the fault with its evidence and a sentence', () => {
    const typed = answers(SHEET, faultsOf('no-reduction'))
    const { named, verdict, sentence } = diagnose(typed)
    expect(named).toMatchObject([
      { fault: 'no-reduction', alsoFits: [], explains: [0, 1, 2, 3, 4, 5, 6, 7, 9] },
    ])
    expect(verdict).toBe('fault named')
    expect(sentence).toBe(
      'Adds ten to a column that is short, but reduces nothing to its left. This explains 9 of 9 wrong answers.',
    )
  })

  it('is nothing on one wrong answer alone: more questions would tell', () => {
    const typed = answers(SHEET).with(5, '5101')
    const { named, open, verdict } = diagnose(typed)
    expect(named).toEqual([])
    const one = prepareDiagnosis(questionsOf('874 − 523', '305 − 128')).diagnose(['351', '277'])
    expect(one).toMatchObject({ named: [], open: ['nine-for-free'], verdict: 'more questions would tell' })
    expect(one.sentence).toContain('turns a 0 into 9')
    expect([open, verdict]).toEqual([[], 'slips'])
  })

  it('needs two answers that are exactly the fault’s; one but for a slip is told beside them', () => {
    const questions = questionsOf('874 − 523', '5040 − 2308', '6105 − 2350', '8000 − 2999')
    const prepared = prepareDiagnosis(questions)
    expect(prepared.diagnose(['351', '3040', '3804', '5001']).named).toEqual([])
    expect(prepared.diagnose(['351', '3040', '3804', '6000']).named).toMatchObject([
      { fault: 'zero-gives-zero', explains: [1, 3], explainsButForSlip: [2] },
    ])
  })

  it('is one that comes and goes on three answers exactly its own and two thirds of the wrong ones', () => {
    const right = answers(SHEET)
    const held = answers(SHEET, faultsOf('takes-smaller-from-larger'))
    const partly = right.map((answer, index) => (index % 2 === 0 ? (held[index] ?? '') : answer))
    const { named, sentence } = diagnose(partly)
    expect(named).toMatchObject([
      { fault: 'takes-smaller-from-larger', held: 'now and then', explains: [0, 2, 4, 6] },
    ])
    expect(sentence).toMatch(/^Now and then: takes the smaller digit/)
    const fromHere = right.map((answer, index) => (index >= 5 ? (held[index] ?? '') : answer))
    expect(diagnose(fromHere).named[0]?.fault).toBe('takes-smaller-from-larger')
    expect(diagnose(partly.with(6, '7128').with(4, '3755')).named).toEqual([])
    expect(diagnose(partly.with(1, '9').with(3, '8').with(5, '7')).named).toEqual([])
  })

  it('shares the probability between faults that no answer tells apart, and lists them', () => {
    const questions = questionsOf('5040 − 2308', '8000 − 2999', '6070 − 3450', '9000 − 1200')
    const typed = answers(questions, faultsOf('zero-gives-digit'))
    const { named, sentence } = prepareDiagnosis(questions).diagnose(typed)
    const accounts = accountsFor(questions)
    const posterior = posteriorFor(questions, accounts, DIAGNOSIS_SETTINGS).posteriorOf(typed)
    expect(named).toMatchObject([{ fault: 'takes-smaller-from-larger', alsoFits: ['zero-gives-digit'] }])
    const chanceOf = (id: FaultId) =>
      posterior.accounts[accounts.findIndex(({ ids }) => ids.join() === id)] ?? 0
    expect(chanceOf('takes-smaller-from-larger') / chanceOf('zero-gives-digit')).toBeCloseTo(3, 6)
    expect(sentence).toContain('These answers fit as well')
  })

  it('is two faults only where each explains two answers that the other does not', () => {
    const questions = [...SHEET, ...questionsOf('4060 − 1020', '970 − 206', '5040 − 1302')]
    const both = faultsOf('nine-for-free', 'take-zero-gives-zero').filter(
      ({ operation }) => operation === 'subtract',
    )
    const prepared = prepareDiagnosis(questions)
    const { named } = prepared.diagnose(answers(questions, both))
    expect(named.map(({ fault }) => fault).sort()).toEqual(['nine-for-free', 'take-zero-gives-zero'])
    const [right, onlyNine] = [answers(questions), answers(questions, both.slice(0, 1))]
    for (const { fault, explains } of named) {
      expect(explains.length).toBeGreaterThanOrEqual(2)
      const without = fault === 'nine-for-free' ? answers(questions, both.slice(1)) : onlyNine
      for (const index of explains)
        expect([right[index], without[index]]).not.toContain(answers(questions, both)[index])
    }
    expect(prepared.diagnose(onlyNine).named.map(({ fault }) => fault)).toEqual(['nine-for-free'])
  })

  it('is nothing without a pattern', () => {
    const { named, verdict, sentence } = diagnose([
      '12',
      '999',
      '2436',
      '41',
      '700',
      '88',
      '7128',
      '3',
      '351',
      '60',
    ])
    expect([named, verdict]).toEqual([[], 'no pattern'])
    expect(sentence).toBe('No pattern in the wrong answers: look at the working.')
  })

  it('is nothing for right answers, and slips are called slips', () => {
    expect(diagnose(answers(SHEET))).toMatchObject({ named: [], verdict: 'right method' })
    const slips = answers(SHEET).with(0, '476').with(8, '361')
    expect(diagnose(slips)).toMatchObject({ named: [], verdict: 'slips' })
  })

  it('keeps the operations apart on a mixed sheet, and knows one who always adds', () => {
    const questions = [...SHEET.slice(0, 5), ...questionsOf('789 + 642', '467 + 258', '3856 + 479')]
    const adding = FAULTS.filter(({ id, operation }) => id === 'wrong-operation' && operation === 'subtract')
    const prepared = prepareDiagnosis(questions)
    expect(prepared.diagnose(answers(questions, adding)).named).toMatchObject([
      { fault: 'wrong-operation', explains: [0, 1, 2, 3, 4] },
    ])
    expect(prepared.diagnose(answers(questions, faultsOf('writes-whole-total'))).named).toMatchObject([
      { fault: 'writes-whole-total', explains: [5, 6, 7] },
    ])
  })

  it('says which faults the questions would not show', () => {
    expect(prepareDiagnosis(questionsOf('932 − 457', '846 − 302')).unseen).toEqual([
      'zero-gives-digit',
      'zero-gives-zero',
      'skips-over-zero',
      'nine-for-free',
      'zero-left-as-ten',
      'lines-up-left',
      'lines-up-right',
      'drops-unpaired-digits',
    ])
  })

  it('copes with no questions', () => {
    expect(prepareDiagnosis([]).diagnose([])).toMatchObject({ named: [], verdict: 'nothing to go on' })
  })
})

describe('the likeliest fault behind one answer', () => {
  it.each([
    ['932 − 457', '525', 'takes-smaller-from-larger'],
    ['305 − 128', '87', 'skips-over-zero'],
    ['5040 − 2308', '3348', 'takes-smaller-from-larger'],
    ['5040 − 2308', '3040', 'zero-when-short'],
    ['467 + 258', '61115', 'writes-whole-total'],
    ['932 − 457', '475', null],
    ['932 − 457', '476', null],
  ] as const)('%s, %s: %s', (text, typed, fault) => {
    expect(likeliestFault(asked(text), typed)).toBe(fault)
  })

  it('gives exactly this answer, always', () => {
    for (const each of SHEET)
      for (const fault of FAULTS) {
        const typed = fault.apply(each.calculation)
        const id = typed === null ? null : likeliestFault(each, typed)
        if (typed === null || typed === answerWith([], each.calculation)) expect(id).toBeNull()
        else
          expect(
            FAULTS.filter((other) => other.id === id).map((other) => other.apply(each.calculation)),
          ).toContain(typed)
      }
  })
})

describe('slips', () => {
  it('are one digit out by one, or two digits swapped, and their shares add up to 1', () => {
    const slips = slipsOf('475', 0, 0.2)
    expect([...slips.keys()].sort()).toEqual(
      ['375', '574', '457', '474', '465', '476', '485', '575', '745'].sort(),
    )
    expect(slips.get('476')).toBeCloseTo(0.8 / 6, 10)
    expect(slips.get('457')).toBeCloseTo(0.2 / 3, 10)
    fc.assert(
      fc.property(fc.nat({ max: 99_999 }), fc.nat({ max: 2 }), (value, places) => {
        const answer = String(value / 10 ** places)
        const shares = slipsOf(answer, places, 0.2)
        expect([...shares.values()].reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 10)
        expect(shares.has(answer)).toBe(false)
      }),
    )
  })

  it('touch the digits that stand on paper: 8.6 is written 8.60 among hundredths, and 100 can become 0', () => {
    expect(slipsOf('8.6', 2, 0.2).has('8.61')).toBe(true)
    expect(slipsOf('8.6', 1, 0.2).has('8.61')).toBe(false)
    expect(slipsOf('100', 0, 0.2).has('0')).toBe(true)
  })
})

describe('a class', () => {
  it('has the faults that are about, whom they touch and which questions show them', () => {
    const { diagnose } = prepareDiagnosis(SHEET)
    const named = [
      answers(SHEET),
      answers(SHEET, faultsOf('drops-unpaired-digits')),
      answers(SHEET, faultsOf('nine-for-free')),
      answers(SHEET, faultsOf('nine-for-free')).with(0, '476'),
    ].map((typed) => diagnose(typed).named)
    expect(faultsOfClass(named, SHEET)).toEqual([
      { fault: 'nine-for-free', pupils: [2, 3], shownBy: [1, 2, 5, 7] },
      { fault: 'drops-unpaired-digits', pupils: [1], shownBy: [6, 7] },
    ])
  })

  it('two faults reach every question that the two at once get wrong', () => {
    expect(reachOf(['nine-for-free', 'drops-unpaired-digits'], SHEET)).toEqual([1, 2, 5, 6, 7])
    expect(reachOf([], SHEET)).toEqual([])
  })
})
