import { describe, expect, it } from 'vitest'
import { RECIPES, type Recipe } from '../../src/items/recipes'
import { handoutByGroup, placePupils } from '../../src/lesson/byGroup'
import { makeLesson } from '../../src/lesson/lessonSet'
import { review } from '../../src/marksheet/marking/review'
import { MAKING } from './making'

/** Through a zero four times, then with no exchange; Ada has all right, Ben takes the smaller digit from the larger, Cai tries little. */
const QUESTIONS = ['305 − 128', '504 − 237', '702 − 345', '806 − 459', '874 − 523', '965 − 432']
const PUPILS = [
  ['Ada B', 177, 267, 357, 347, 351, 533],
  ['Ben C', 223, 333, 443, 453, 351, 533],
  ['Cai D', 177, null, null, null, 351, 533],
  ['Dee E', 170, 260, 350, 340, 351, 533],
]
const { pupils = [] } = review({ name: 'S', values: [['Name', ...QUESTIONS], ...PUPILS] })[0] ?? {}

function recipeOf(type: Recipe['kind']['type'], operation: Recipe['operation'] = 'subtract'): Recipe {
  const found = RECIPES.find(
    ({ year, topic, operation: own, kind }) =>
      year === 4 && topic === 'Four-digit numbers' && own === operation && kind.type === type,
  )
  if (!found) throw new Error('No such recipe.')
  return found
}
const grades = (recipe: Recipe) => placePupils(pupils, recipe).map(({ name, grade }) => `${name}: ${grade}`)

describe('one lesson for a mixed class', () => {
  it('the groups of Review take the way in, those secure go deeper, all others work at the objective', () => {
    expect(grades(recipeOf('through a zero'))).toEqual([
      'Ada B: Deeper',
      'Ben C: The way in',
      'Cai D: The objective',
      'Dee E: The way in',
    ])
  })

  it('a need that lies in the other operation, or beyond the objective, is no reason for the way in', () => {
    expect(grades(recipeOf('no carry', 'add'))).toEqual(PUPILS.map(([name]) => `${name}: The objective`))
    expect(grades(recipeOf('one exchange, tens to ones'))[3]).toBe('Dee E: The objective')
  })

  it('is printed in one: a sheet with the name for each pupil, grade by grade, and not a word of why on it', () => {
    const recipe = recipeOf('through a zero')
    const made = makeLesson({ recipe, seed: 1 })
    if ('problem' in made) throw new Error(made.problem)
    const placed = placePupils(pupils, recipe)
    const { sheets } = handoutByGroup(made.lesson, placed, MAKING)
    const forPupils = sheets.filter(({ reader }) => reader === 'pupil')
    expect(sheets.slice(0, forPupils.length)).toEqual(forPupils)
    expect(forPupils.slice(3).map(({ title }) => title)).toEqual([
      'Ben C. The way in',
      'Dee E. The way in',
      'Cai D. The objective',
      'Ada B. Deeper',
    ])
    const text = JSON.stringify(forPupils)
    for (const { because } of placed) expect(text).not.toContain(because)
    const [placing] = sheets.filter(({ title }) => title === 'Who works on what')
    expect(placing?.reader).toBe('adult')
    for (const { name, because } of placed) expect(JSON.stringify(placing)).toContain(`${name}: ${because}`)
  })
})
