import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerKey } from '../../src/answers/typed'
import { workOut } from '../../src/arithmetic/columns'
import { exchangesOf } from '../../src/arithmetic/exchange'
import { amountText, type Question } from '../../src/arithmetic/question'
import { scaledValue } from '../../src/arithmetic/numeral'
import { generatorFrom } from '../../src/items/seed'
import { TEACHING_ORDER } from '../../src/mastery/support'
import {
  drawStories,
  drawStory,
  storyFrom,
  storyTypes,
  TEMPLATES,
  wishFor,
  type Story,
  type StoryWish,
} from '../../src/lesson/stories/story'
import { barDrawing, barInWords } from '../../src/lesson/drawings'
import { RECIPES } from '../../src/items/recipes'
import type { Template } from '../../src/lesson/stories/template'

const seeds = fc.integer()
const anyTypes = ['any', 'any'] as const

/** The numbers of digits, from 2 to 4, that a template's first number can have, with a third no longer. */
function digitsFor({ limits }: Template): (2 | 3 | 4)[] {
  return ([2, 3, 4] as const).filter(
    (digits) =>
      limits.first[1] >= 10 ** (digits - 1) && Math.max(limits.first[0], limits.third[0]) < 10 ** digits,
  )
}

function storyOf(template: Template, seed: number, digits: 2 | 3 | 4): Story {
  const story = storyFrom(template, { types: anyTypes, digits, seed }, generatorFrom(seed))
  if (!story) throw new Error(`${template.id} has no story with ${digits} digits.`)
  return story
}

const valueOf = (question: Question, places: number) =>
  Number(scaledValue(answerKey(question).numeral, places))
const operands = ({ calculation }: Question, places: number) =>
  [calculation.top, calculation.bottom].map((numeral) => Number(scaledValue(numeral, places)))

describe.each(TEMPLATES.map((template) => [template.id, template] as const))(
  'the story %s',
  (_, template) => {
    const cases = fc.tuple(seeds, fc.constantFrom(...digitsFor(template)))
    const check = (holds: (story: Story) => void) =>
      fc.assert(
        fc.property(cases, ([seed, digits]) => holds(storyOf(template, seed, digits))),
        { numRuns: 25 },
      )

    it('has sensible quantities, none of them negative or nothing', () => {
      check(({ steps, bars }) => {
        const [first, second] = operands(steps[0], template.places)
        const between = valueOf(steps[0], template.places)
        const answer = valueOf(steps[1], template.places)
        const { limits } = template
        const within = (value: number | undefined, [least, most]: readonly [number, number]) => {
          expect(value).toBeGreaterThanOrEqual(least)
          expect(value).toBeLessThanOrEqual(most)
        }
        within(first, limits.first)
        within(second, limits.second)
        within(answer, limits.answer)
        expect(between).toBeGreaterThan(1)
        for (const { whole, parts } of bars) {
          expect(parts[0].length + parts[1].length).toBe(whole.length)
          for (const piece of [whole, ...parts]) expect(piece.length).toBeGreaterThan(0)
        }
      })
    })

    it('tells every number once, in clean sentences, and ends with its only question', () => {
      check(({ text, bars }) => {
        expect(text).toMatch(/^[A-Z].*[a-z]\?$/)
        expect(text).not.toMatch(/\s\s|undefined|NaN|\bnull\b/)
        expect(text.match(/\?/g)).toHaveLength(1)
        expect(text).not.toMatch(/ [.,?]|[.,]{2}|\b(?:a|an) [£\d]/)
        for (const sentence of text.split(/(?<=[.?]) /)) expect(sentence).toMatch(/^[A-Z£\d].*[.?]$/)
        const printed = bars
          .flatMap(({ whole, parts }) => [whole, ...parts])
          .filter(({ role }) => role === 'told')
          .map(({ amount }) => amount)
        expect(printed.length).toBeGreaterThanOrEqual(3)
        for (const amount of printed)
          expect(text.split(/[^\d,.£]+/).map((word) => word.replace(/[.,]$/, ''))).toContain(
            amount.replace(/ \w+$/, ''),
          )
      })
    })

    it('needs both steps: no number told and no one sum or difference of them is the answer', () => {
      check(({ text, steps }) => {
        const numbers = [...text.replace(/Year \d/g, '').matchAll(/\d[\d,]*(?:\.\d+)?/g)].map(([number]) =>
          Math.round(Number(number.replaceAll(',', '')) * 10 ** template.places),
        )
        const answer = valueOf(steps[1], template.places)
        expect(numbers).toHaveLength(template.flow === 'with-first' ? 2 : 3)
        for (const one of numbers)
          for (const other of numbers.filter((each) => each !== one))
            expect([one, one + other, one - other]).not.toContain(answer)
      })
    })

    it('answers in a sentence with the result of the second step, which goes on from that of the first', () => {
      check(({ answer, steps, bars }) => {
        const result = amountText(answerKey(steps[1]).numeral, template.unit)
        expect(answer).toMatch(/^[A-Z£\d].*\.$/)
        expect(answer).toContain(result)
        expect(operands(steps[1], template.places)).toContain(valueOf(steps[0], template.places))
        expect(steps.map(({ calculation }) => calculation.operation)).toEqual(template.operations)
        bars.forEach(({ whole, parts }, index) => {
          const asked = [whole, ...parts].filter(({ role }) => role === 'asked')
          expect(asked.map(({ length }) => length)).toEqual([
            valueOf(steps[index] ?? steps[0], template.places),
          ])
        })
      })
    })

    it('has labels for its bars, and an answer in the singular where it can be 1', () => {
      const { labels, flow, limits } = template
      expect(Object.values(labels).filter((label) => label === '')).toHaveLength(
        flow === 'with-first' ? 1 : 0,
      )
      for (const label of Object.values(labels)) expect(label.length).toBeLessThanOrEqual(26)
      expect(`${labels.first}${labels.second}`.length).toBeLessThanOrEqual(42)
      expect(`${labels.third}${labels.between}`.length).toBeLessThanOrEqual(42)
      expect(`${labels.third}${labels.answer}`.length).toBeLessThanOrEqual(42)
      expect(new Set(Object.values(labels)).size).toBe(5)
      if (limits.answer[0] === 1 && template.unit === '')
        expect(template.answer('1', true)).not.toBe(template.answer('1', false))
    })
  },
)

describe('the quantities of a story', () => {
  const told = (holds: (story: Story, numbers: readonly number[]) => void) =>
    fc.assert(
      fc.property(seeds, fc.constantFrom(2, 3, 4), (seed, digits) => {
        const drawn = drawStory({ types: anyTypes, digits, seed })
        if ('problem' in drawn) throw new Error(drawn.problem)
        const amounts = drawn.story.bars.flatMap(({ whole, parts }) => [whole, ...parts])
        holds(
          drawn.story,
          amounts.map(({ amount }) => Number(amount.replace(/[£,]/g, ''))),
        )
      }),
      { numRuns: 400 },
    )

  it('are told in metres, not in a thousand centimetres or more', () => {
    told(({ text }, numbers) => {
      if (/\bcm\b/.test(text)) expect(Math.max(...numbers)).toBeLessThan(1000)
    })
  })

  it('lose no more than is likely: seeds that fail, trees in a storm, visitors who stay away, a rope much shorter', () => {
    const most: Readonly<Record<string, number>> = {
      'sunflower-seeds': 1 / 3,
      'woodland-trees': 1 / 4,
      'aquarium-weekend': 2 / 3,
      'two-ropes': 3 / 4,
    }
    const seen = new Set<string>()
    told(({ template, steps }) => {
      const share = most[template]
      if (share === undefined) return
      const [first = 0, second = 0] = operands(steps[0], 0)
      seen.add(template)
      expect(second / first).toBeLessThanOrEqual(share)
    })
    expect([...seen].sort()).toEqual(Object.keys(most).sort())
  })

  it('are prices that a child could pay', () => {
    told(({ template, text }) => {
      if (template !== 'torch-and-map') return
      for (const [, pounds] of text.matchAll(/costs £(\d+)/g)) expect(Number(pounds)).toBeLessThanOrEqual(16)
    })
  })

  it('belong to no school by name', () => {
    told(({ text }) => {
      expect(text).not.toMatch(/[A-Z]\w+ School/)
    })
  })
})

describe('drawing stories', () => {
  const wishes: readonly StoryWish['types'][] = [
    ['two exchanges, next to each other', 'one exchange, tens to ones'],
    ['through a zero', 'no exchange'],
    ['one carry, ones to tens', 'through a zero'],
    ['two carries, next to each other', 'two exchanges, next to each other'],
    ['one exchange, hundreds to tens', 'two carries, apart'],
    ['no carry', 'one carry, tens to hundreds'],
    ['any', 'through two or more zeros'],
  ]
  it.each(wishes)('controls the type of each step: %s, then %s', (first, second) => {
    for (const digits of [3, 4] as const) {
      const drawn = drawStories({ types: [first, second], digits, seed: 'types' }, 4)
      if ('problem' in drawn) throw new Error(drawn.problem)
      expect(drawn.stories).toHaveLength(4)
      for (const { steps } of drawn.stories) {
        const types = steps.map(({ calculation }) => exchangesOf(workOut(calculation)).type)
        if (first !== 'any') expect(types[0]).toBe(first)
        expect(types[1]).toBe(second)
      }
    }
  })

  it('uses every context before one comes again', () => {
    const count = TEMPLATES.filter((template) => digitsFor(template).includes(3)).length
    const drawn = drawStories({ types: anyTypes, digits: 3, seed: 5 }, count)
    if ('problem' in drawn) throw new Error(drawn.problem)
    expect(new Set(drawn.stories.map(({ template }) => template)).size).toBe(count)
    expect(count).toBeGreaterThanOrEqual(20)
  })

  it('is the same for the same seed', () => {
    const wish: StoryWish = { types: anyTypes, digits: 3, seed: 7 }
    expect(drawStory(wish)).toEqual(drawStory({ ...wish, seed: '7' }))
    expect(drawStory(wish)).not.toEqual(drawStory({ ...wish, seed: 8 }))
  })

  it('says why there is none', () => {
    expect(drawStory({ types: ['one carry, beyond ten thousands', 'any'], digits: 3, seed: 1 })).toEqual({
      problem:
        'There is no story with 3-digit numbers that has “one carry, beyond ten thousands” and then “any”.',
    })
  })
})

describe('the types that a step can be asked to have', () => {
  it('are in the order of teaching, and no other type can be had', () => {
    for (const digits of [2, 3, 4] as const)
      for (const step of [0, 1] as const) {
        const possible = storyTypes(digits, step)
        expect(possible).toEqual(TEACHING_ORDER.filter((type) => possible.includes(type)))
        for (const type of TEACHING_ORDER.filter((each) => !possible.includes(each))) {
          const types = step === 0 ? ([type, 'any'] as const) : (['any', type] as const)
          expect(drawStory({ types, digits, seed: 1 })).toHaveProperty('problem')
        }
      }
  })

  it('can all be had in the first step', () => {
    for (const digits of [2, 3, 4] as const)
      for (const type of storyTypes(digits, 0))
        expect(drawStory({ types: [type, 'any'], digits, seed: 1 })).toHaveProperty('story')
  })
})

describe('the labels of a bar', () => {
  it('leave each other room below the bar, in a wide font too', () => {
    for (const template of TEMPLATES)
      for (const { parts } of storyOf(template, 1, digitsFor(template)[0] ?? 3).bars)
        expect(parts[0].label.length + parts[1].label.length).toBeLessThanOrEqual(40)
  })
})

describe('stories for an objective', () => {
  it('have its type in one step and its numbers in every draw, in kilograms, metres or litres where these are measured', () => {
    const unsuited: string[] = []
    for (const recipe of RECIPES) {
      const wish = wishFor(recipe)
      const drawn = drawStories({ ...wish, seed: recipe.objective }, 3)
      if ('problem' in drawn) {
        unsuited.push(`${recipe.topic}: ${recipe.name}`)
        continue
      }
      for (const { steps } of drawn.stories) {
        const types = steps.map(({ calculation }) => exchangesOf(workOut(calculation)).type)
        const asked = wish.types.filter((type) => type !== 'any')
        for (const type of asked) expect(types).toContain(type)
        if (recipe.topic === 'Measures with one decimal place')
          for (const { unit } of steps) expect(['kg', 'm', 'l']).toContain(unit)
        if (recipe.topic === 'Pounds and pence') for (const { unit } of steps) expect(unit).toBe('£')
      }
    }
    expect(unsuited).toEqual([])
  })
})

describe('a comparison', () => {
  it('is two bars, the larger amount above the smaller with the difference beside it, in every draw', () => {
    fc.assert(
      fc.property(seeds, fc.constantFrom(...TEMPLATES), (seed, template) => {
        const digits = digitsFor(template)[0] ?? 3
        const [bar, other] = storyOf(template, seed, digits).bars
        expect([bar.compares, other.compares]).toEqual([template.flow === 'with-first', false])
        if (!bar.compares) return
        expect(bar.parts[1].label).toBe(template.labels.second)
        expect(barInWords(bar, 'told')).toMatch(/^The larger: .* The smaller: .* The difference: /)
        const kinds = barDrawing(bar, 'told').shapes.map(({ kind }) => kind)
        expect(kinds.filter((kind) => kind === 'bar')).toHaveLength(2)
        expect(kinds.filter((kind) => kind === 'difference')).toHaveLength(1)
      }),
    )
  })

  it('and any bars to be filled show no amount, and are cut at one place whatever the numbers', () => {
    fc.assert(
      fc.property(seeds, fc.constantFrom(...TEMPLATES), (seed, template) => {
        const cuts = storyOf(template, seed, digitsFor(template)[0] ?? 3).bars.map((bar) => {
          const { shapes } = barDrawing(bar, 'nothing')
          const texts = shapes.flatMap((shape) =>
            shape.shape === 'text' && shape.kind === 'amount' ? [shape.text] : [],
          )
          expect(texts).toEqual(['', '', ''])
          return shapes.flatMap((shape) => (shape.shape === 'rect' ? [shape.width] : []))
        })
        expect(cuts[0]).toEqual(cuts[1])
      }),
    )
  })
})
