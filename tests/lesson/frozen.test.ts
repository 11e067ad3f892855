import { describe, expect, it } from 'vitest'
import { printQuestion } from '../../src/arithmetic/question'
import { RECIPES } from '../../src/items/recipes'
import { makeLesson, questionsOf } from '../../src/lesson/lessonSet'
import { freshNumber, repeatedIn } from '../../src/lesson/repeats'
import { drawStories } from '../../src/lesson/stories/story'

/**
 * Lessons as they were first drawn, with 4 questions in a grade and 3 in the recap. A set number that a teacher has written down must give
 * the same lesson for ever: where this test fails, the drawing has changed, and not the test must give way.
 */
const LESSONS = [
  {
    topic: 'Four-digit numbers',
    operation: 'subtract',
    type: 'through a zero',
    set: '208',
    example: ['6,904 − 6,279', '7,703 − 4,116'],
    practice: [
      ['604 − 355', '600 − 342', '901 − 654', '902 − 639'],
      ['4,032 − 1,362', '6,013 − 1,859', '8,104 − 5,756', '8,400 − 7,412'],
      ['3,295 + □ = 9,081', '4,059 − □ = 3,661'],
    ],
    tasks: [
      'Write the missing digits. Which did you find first?',
      '7,803 − 4,558 = 3,155 is wrong. Find the mistake. What would you tell somebody who made it?',
      'A 0 that an exchange goes through ends up as 9. Give an example.',
      'Look at 7,605 − 1,777. Which columns need an exchange? How can you tell before you work it out?',
    ],
    recap: ['3,741 + 6,219', '8,741 − 5,219', '4,688 − 2,294'],
  },
  {
    topic: 'Four-digit numbers',
    operation: 'add',
    type: 'two carries, next to each other',
    set: '4827',
    example: ['4,496 + 3,478', '2,129 + 6,584'],
    practice: [
      ['435 + 571', '374 + 734', '241 + 766', '491 + 479'],
      ['4,107 + 4,393', '4,026 + 5,294', '5,391 + 3,761', '6,662 + 5,935'],
      ['□ − 5,685 = 3,381', '□ − 7,964 = 3,504'],
    ],
    tasks: [
      'Write the missing digits. Which did you find first?',
      '7,552 + 1,664 = 8,116 is wrong. Find the mistake. What would you tell somebody who made it?',
      'Two three-digit numbers add up to a four-digit number. Give an example.',
      'Look at 3,226 + 1,384. Which columns make 10 or more? How can you tell before you work it out?',
    ],
    recap: ['3,513 + 2,129', '3,300 + 2,787', '787 − 47'],
  },
  {
    topic: 'Pounds and pence',
    operation: 'subtract',
    type: 'any',
    set: '305',
    example: ['£92.77 − £69.93', '£25.46 − £15.51'],
    practice: [
      ['£7.95 − £4.32', '£9.90 − £2.73', '£5.53 − £1.57', '£8.50 − £1.68'],
      ['£63.61 − £39.95', '£94.79 − £87.80', '£23.24 − £12.15', '£77.84 − £66.53'],
      ['£3.29 + □ = £58.50', '£28.38 − □ = £3.05'],
    ],
    tasks: [
      'Write the missing digits. Which did you find first?',
      '£81.01 − £58.74 = £30.00 is wrong. Find the mistake. What would you tell somebody who made it?',
      'If the top number has a 0 in it, the subtraction needs an exchange. Give an example.',
      'Look at £46.34 − £13.15. Which columns need an exchange? How can you tell before you work it out?',
    ],
    recap: ['£39.13 + £19.72', '£76.56 + £9.92', '£74.54 − £52.92'],
  },
  {
    topic: 'Measures with one decimal place',
    operation: 'subtract',
    type: 'one exchange, ones to tenths',
    set: 'owls',
    example: ['69.3 kg − 26.7 kg', '88.1 kg − 44.8 kg'],
    practice: [
      ['9.2 kg − 1.6 kg', '5.2 m − 2.7 m', '8.4 l − 4.9 l', '4.0 kg − 2.6 kg'],
      ['79.6 kg − 55.9 kg', '76.0 m − 51.4 m', '84.6 l − 23.9 l', '89.2 kg − 17.3 kg'],
      ['51.7 kg + □ = 82.5 kg', '59.7 m − □ = 21.9 m'],
    ],
    tasks: [
      'Write the missing digits. Which did you find first?',
      '94.0 m − 51.6 m = 43.0 m is wrong. Find the mistake. What would you tell somebody who made it?',
      'If every digit on top is larger than the digit below it, the subtraction needs an exchange. Give an example.',
      'Look at 59.4 l − 53.6 l. Which columns need an exchange? How can you tell before you work it out?',
    ],
    recap: ['17.1 kg + 59.2 kg', '69.7 kg − 59.1 kg', '41.7 kg − 36.1 kg'],
  },
]

const STORIES = [
  ['932 − 164', '840 − 768'],
  ['962 + 482', '1,444 + 947'],
]

const recipeOf = ({ topic, operation, type }: (typeof LESSONS)[number]) => {
  const found = RECIPES.find(
    (recipe) =>
      recipe.year === 4 &&
      recipe.topic === topic &&
      recipe.operation === operation &&
      recipe.kind.type === type,
  )
  if (!found) throw new Error('No such recipe.')
  return found
}

describe('a set number', () => {
  it.each(LESSONS.map((lesson) => [lesson.set, lesson] as const))('%s holds for ever', (_, frozen) => {
    const made = makeLesson({ recipe: recipeOf(frozen), seed: frozen.set, practice: 4, recap: 3 })
    if ('problem' in made) throw new Error(made.problem)
    const { model, partner, practice, recap } = made.lesson
    const texts = (questions: readonly { readonly text: string }[]) => questions.map(({ text }) => text)
    expect({
      example: texts([model, partner]),
      practice: practice.map(({ questions }) => texts(questions)),
      tasks: texts(practice[2]?.tasks ?? []),
      recap: texts(recap),
    }).toEqual({
      example: frozen.example,
      practice: frozen.practice,
      tasks: frozen.tasks,
      recap: frozen.recap,
    })
  })

  it('of stories holds for ever', () => {
    const drawn = drawStories({ numbers: 'whole', digits: 3, types: ['any', 'any'], seed: '4827' }, 2)
    if ('problem' in drawn) throw new Error(drawn.problem)
    expect(drawn.stories.map(({ steps }) => steps.map(printQuestion))).toEqual(STORIES)
  })

  it('is passed over by Another draw where it repeats what was set, and tells which it repeats', () => {
    const [first, second] = LESSONS.slice(0, 2).map((frozen) => {
      const made = makeLesson({ recipe: recipeOf(frozen), seed: frozen.set, practice: 4, recap: 3 })
      if ('problem' in made) throw new Error(made.problem)
      return questionsOf(made.lesson)
    })
    if (!first || !second) throw new Error('There are two lessons.')
    const before = first.slice(0, 2)
    const numbers = ['208', '208', '4827', '9']
    const drawn = freshNumber(
      () => numbers.shift() ?? '',
      (number) => repeatedIn(number === '208' ? first : second, before).length,
    )
    expect(drawn).toBe('4827')
    expect(repeatedIn(first, before).map(printQuestion)).toEqual(before.map(printQuestion))
    expect(
      freshNumber(
        () => '7',
        () => 3,
      ),
    ).toBe('7')
  })
})
