import { Field, Select } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import type { Operation } from '../../src/arithmetic/question'
import { RECIPES, type Recipe } from '../../src/items/recipes'
import { TOPICS } from '../../src/items/wish'
import { ladderOf } from '../../src/lesson/objectives'
import { TOPICS_BY_YEAR } from '../set/choices'

/** The recipe that a part of the lesson starts with: Year 4's four-digit subtraction through a zero. */
export const FIRST_RECIPE: Recipe = recipeOf(
  TOPICS.find(({ topic }) => topic === 'Four-digit numbers'),
  'subtract',
  'through a zero',
)

function recipeOf(
  topic: { readonly year: number; readonly topic: string } | undefined,
  operation: Operation,
  type: Recipe['kind']['type'],
): Recipe {
  const ladder = RECIPES.filter(
    (each) => each.year === topic?.year && each.topic === topic.topic && each.operation === operation,
  )
  const recipe = ladder.find(({ kind }) => kind.type === type) ?? ladder.at(-1)
  if (!recipe) throw new RangeError('There is no such recipe.')
  return recipe
}

/** A choice of a recipe: operation, numbers, and which questions. A type that other numbers do not have gives way to mixed ones. */
export function RecipeChoice(props: {
  readonly recipe: Recipe
  readonly onChoose: (recipe: Recipe) => void
}): ReactElement {
  const { recipe, onChoose } = props
  const { operation, kind } = recipe
  const topic = TOPICS.findIndex((each) => each.year === recipe.year && each.topic === recipe.topic)
  return (
    <>
      <Field label="Operation">
        <Select
          value={operation}
          onChange={(_, { value }) => {
            onChoose(recipeOf(recipe, value === 'add' ? 'add' : 'subtract', kind.type))
          }}
        >
          <option value="subtract">Subtraction</option>
          <option value="add">Addition</option>
        </Select>
      </Field>
      <Field label="Numbers">
        <Select
          value={String(topic)}
          onChange={(_, { value }) => {
            onChoose(recipeOf(TOPICS[Number(value)], operation, kind.type))
          }}
        >
          {TOPICS_BY_YEAR.map(({ year, topics }) => (
            <optgroup key={year} label={`Year ${year}`}>
              {topics.map(({ index, topic: name }) => (
                <option key={index} value={index}>
                  {name}
                </option>
              ))}
            </optgroup>
          ))}
        </Select>
      </Field>
      <Field label="Questions" hint={`“${recipe.objective}”`}>
        <Select
          value={kind.type}
          onChange={(_, { value }) => {
            onChoose(ladderOf(recipe).find((each) => each.kind.type === value) ?? recipe)
          }}
        >
          {ladderOf(recipe).map((each) => (
            <option key={each.kind.type} value={each.kind.type}>
              {each.name}
            </option>
          ))}
        </Select>
      </Field>
    </>
  )
}
