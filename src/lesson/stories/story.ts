import { uniformBigInt } from 'pure-rand/distribution/uniformBigInt'
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import { workOut } from '../../arithmetic/columns'
import { exchangesOf, type ExchangeType } from '../../arithmetic/exchange'
import { movePoint, scaledValue, wholeNumeral, type Numeral } from '../../arithmetic/numeral'
import { amountText, questionOf, type Operation, type Question } from '../../arithmetic/question'
import { takeCensus, type Census } from '../../items/census'
import { questionAt } from '../../items/draw'
import { problemOfKind, type Kind } from '../../items/kind'
import type { Recipe } from '../../items/recipes'
import { generatorFrom } from '../../items/seed'
import { TEACHING_ORDER } from '../../mastery/support'
import { CHILDREN } from '../children'
import { pickFrom, shuffled, wholeBetween } from '../random'
import { barsOf, type Bar } from './bars'
import { JOINING } from './joining'
import { MEASURING } from './measuring'
import { TAKING_AWAY } from './takingAway'
import { secondOperands, type Limits, type StoryNumbers, type Template } from './template'
import { DOWN_AGAIN, UP_AGAIN, UP_TO_A_WHOLE } from './upAndDown'

/** Every context of a two-step story. */
export const TEMPLATES: readonly Template[] = [
  ...TAKING_AWAY,
  ...JOINING,
  ...UP_AGAIN,
  ...DOWN_AGAIN,
  ...UP_TO_A_WHOLE,
  ...MEASURING,
]

/** A two-step story: what the pupil reads, both calculations in order, the answer in a sentence and a bar for each step. */
export interface Story {
  readonly template: string
  readonly text: string
  readonly steps: readonly [Question, Question]
  readonly answer: string
  readonly bars: readonly [Bar, Bar]
}

/** Whole numbers (of things, or in a measure that the story names), pounds and pence, or measures with a decimal place. */
export type StoryNumbersKind = 'whole' | 'money' | 'measures'

/**
 * What is asked of a story: its numbers (any where left out), the type of each step, and the digits of its longest starting number, those
 * after the point counted.
 */
export interface StoryWish {
  readonly numbers?: StoryNumbersKind
  readonly types: readonly [ExchangeType | 'any', ExchangeType | 'any']
  readonly digits: 2 | 3 | 4
  readonly seed: string | number
}

/**
 * The types that the first step (0) or the second (1) of a story can have, from easy to hard as they are taught.
 * Not every two of them go together.
 */
export function storyTypes(
  digits: StoryWish['digits'],
  step: 0 | 1,
  numbers?: StoryNumbersKind,
): ExchangeType[] {
  return TEACHING_ORDER.filter((type) => {
    const wish: StoryWish = { types: [type, type], digits, seed: '' }
    return templatesOf(numbers).some(
      (template) => canHave(template, digits) && censusOf(template, wish, step),
    )
  })
}

/** The contexts with such numbers. */
function templatesOf(numbers?: StoryNumbersKind): readonly Template[] {
  return TEMPLATES.filter(({ unit, places }) => {
    const kind = places === 0 ? 'whole' : unit === '£' ? 'money' : 'measures'
    return numbers === undefined || numbers === kind
  })
}

/**
 * The numbers and types of stories that suit an objective: one step of its type, the first where stories have it there, the other of
 * any; both of any where no story has it.
 */
export function wishFor({ kind }: Recipe): Omit<StoryWish, 'seed'> & { readonly numbers: StoryNumbersKind } {
  const { type, topDigits, topDecimals = 0, unit } = kind
  const numbers = topDecimals === 0 ? 'whole' : unit === '£' ? 'money' : 'measures'
  const wanted = Math.max(...[topDigits].flat()) + topDecimals
  const digits = numbers === 'measures' ? 3 : (([2, 3, 4] as const).find((each) => each === wanted) ?? 4)
  const wishes: readonly StoryWish['types'][] = [
    [type, 'any'],
    ['any', type],
  ]
  const types = wishes.find((each) => 'story' in drawStory({ numbers, digits, types: each, seed: '' }))
  return { numbers, digits, types: types ?? ['any', 'any'] }
}

/** Whether a template's first number can have so many digits, and the third no more. */
function canHave({ limits }: Template, digits: number): boolean {
  const least = Math.max(limits.first[0], limits.third[0])
  return limits.first[1] >= 10 ** (digits - 1) && least < 10 ** digits
}

/** How often numbers are drawn for one template before the next is tried. */
const MOST_TRIES = 3000

/**
 * A story whose steps have the types asked for, each template that can have them as likely as any other. The same seed gives the
 * same story. The problem is a sentence for the teacher.
 */
export function drawStory(wish: StoryWish): { readonly story: Story } | { readonly problem: string } {
  const story = firstStory(templatesOf(wish.numbers), wish, generatorFrom(wish.seed))
  return story ? { story } : { problem: problemOf(wish) }
}

/** So many stories; no context comes twice before every one that can have the types has come. */
export function drawStories(
  wish: StoryWish,
  count: number,
): { readonly stories: readonly Story[] } | { readonly problem: string } {
  const generator = generatorFrom(wish.seed)
  const stories: Story[] = []
  const all = templatesOf(wish.numbers)
  let left = all
  while (stories.length < count) {
    const story = firstStory(left, wish, generator)
    if (story) {
      stories.push(story)
      left = left.filter(({ id }) => id !== story.template)
    } else if (left.length === all.length) return { problem: problemOf(wish) }
    else left = all
  }
  return { stories }
}

function firstStory(
  templates: readonly Template[],
  wish: StoryWish,
  generator: RandomGenerator,
): Story | null {
  for (const template of shuffled(templates, generator)) {
    const story = storyFrom(template, wish, generator)
    if (story) return story
  }
  return null
}

function problemOf({ types: [first, second], digits }: StoryWish): string {
  return `There is no story with ${digits}-digit numbers that has “${first}” and then “${second}”.`
}

/** A story of one template, or null where its operations or its sensible quantities do not allow the types asked for, or hardly ever. */
export function storyFrom(template: Template, wish: StoryWish, generator: RandomGenerator): Story | null {
  if (!canHave(template, wish.digits)) return null
  const first = censusOf(template, wish, 0)
  if (!first || !censusOf(template, wish, 1)) return null
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const numbers = drawNumbers(template, wish, first, generator)
    if (!isSensible(template, numbers)) continue
    const steps = stepsOf(template, numbers)
    if (hasType(steps[1], wish.types[1]))
      return printed(template, numbers, steps, pickFrom(CHILDREN, generator))
  }
  return null
}

/** The questions a step can be; null where there is none. Only the second step can start from a number one digit longer. */
function censusOf(
  { operations, unit, places }: Template,
  { digits, types }: StoryWish,
  step: 0 | 1,
): Census | null {
  const whole = digits - places
  const shorter = Math.max(whole - 1, places > 0 ? 0 : 1)
  const kind: Kind = {
    operation: operations[step],
    type: types[step],
    topDigits: step === 0 ? whole : [shorter, whole, whole + 1],
    bottomDigits: [shorter, whole],
    topDecimals: places,
    bottomDecimals: places,
    unit,
  }
  if (problemOfKind(kind) !== null) return null
  const census = takeCensus(kind)
  return census.count > 0n ? census : null
}

function drawNumbers(
  template: Template,
  { digits }: StoryWish,
  census: Census,
  generator: RandomGenerator,
): StoryNumbers {
  const { operations, flow, places } = template
  const { top, bottom } = questionAt(census, uniformBigInt(generator, 0n, census.count - 1n))
  const first = Number(scaledValue(top, places))
  const second = Number(scaledValue(bottom, places))
  const between = operations[0] === 'add' ? first + second : first - second
  const [least, most] = thirdLimits(template, between, digits)
  const third = flow === 'with-first' || most < least ? 0 : wholeBetween(least, most, generator)
  const told = { first, second, between, third }
  const [from, by] = secondOperands(flow)
  return { ...told, answer: operations[1] === 'add' ? told[from] + told[by] : told[from] - told[by] }
}

/** What the third number can be: sensible, no longer than asked for, and so that something is left where the second step subtracts. */
function thirdLimits({ limits, flow, operations }: Template, between: number, digits: number): Limits {
  const [least, most] = [limits.third[0], Math.min(limits.third[1], 10 ** digits - 1)]
  if (operations[1] === 'add') return [least, most]
  return flow === 'taken-from' ? [Math.max(least, between + 1), most] : [least, Math.min(most, between - 1)]
}

/** Whether every quantity is sensible in the context, and the answer is not found by one step, or read off the text. */
function isSensible({ limits, flow, isLikely = () => true }: Template, numbers: StoryNumbers): boolean {
  const { first, second, third, between, answer } = numbers
  const told = flow === 'with-first' ? [first, second] : [first, second, third]
  const inLimits = (['first', 'second', 'third', 'answer'] as const).every((name) =>
    isWithin(numbers[name], limits[name]),
  )
  const shortcuts = told.flatMap((one, index) => [
    one,
    ...told.slice(index + 1).flatMap((other) => [one + other, Math.abs(one - other)]),
  ])
  return (
    inLimits && isLikely(numbers) && between > 1 && !told.includes(between) && !shortcuts.includes(answer)
  )
}

function isWithin(value: number, [least, most]: Limits): boolean {
  return value >= least && value <= most
}

function stepsOf({ operations, flow, unit, places }: Template, numbers: StoryNumbers): [Question, Question] {
  const question = (operation: Operation, top: number, bottom: number): Question => {
    const reading = questionOf(
      { operation, top: numeralOf(top, places), bottom: numeralOf(bottom, places) },
      unit,
    )
    if ('problem' in reading) throw new RangeError(reading.problem)
    return reading.question
  }
  const [from, by] = secondOperands(flow)
  return [
    question(operations[0], numbers.first, numbers.second),
    question(operations[1], numbers[from], numbers[by]),
  ]
}

function hasType({ calculation }: Question, type: ExchangeType | 'any'): boolean {
  return type === 'any' || exchangesOf(workOut(calculation)).type === type
}

function numeralOf(value: number, places: number): Numeral {
  return movePoint(wholeNumeral(value), places)
}

function printed(template: Template, numbers: StoryNumbers, steps: Story['steps'], child: string): Story {
  const text = (value: number) => amountText(numeralOf(value, template.places), template.unit)
  const { first, second, third, answer } = numbers
  return {
    template: template.id,
    text: template.tell({ first: text(first), second: text(second), third: text(third), child }),
    steps,
    answer: template.answer(text(answer), answer === 1),
    bars: barsOf(template, numbers, text),
  }
}
