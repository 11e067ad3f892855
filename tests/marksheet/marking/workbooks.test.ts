import { describe, expect, it } from 'vitest'
import { exchangesOf } from '../../../src/arithmetic/exchange'
import { workOut } from '../../../src/arithmetic/columns'
import { reviewJson } from '../../../src/marksheet/reports/json'
import { review } from '../../../src/marksheet/marking/review'
import { bytesOf, expectedOf, matricesOf, WORKBOOKS } from '../../marksheets'

describe.each(WORKBOOKS)('the workbook %s', (name) => {
  const expected = expectedOf(name)
  const reviewed = async () => (await matricesOf(bytesOf(name))).flatMap((matrix) => review(matrix))

  it('holds one marksheet, laid out as expected', async () => {
    const [one, ...more] = (await reviewed()).map(reviewJson)
    expect(more).toEqual([])
    expect([one?.sheet, one?.orientation, one?.marked]).toEqual([expected.sheet, expected.orientation, false])
  })

  it('gives every question its cell, answer and exchanges', async () => {
    const [one] = await reviewed()
    const json = one && reviewJson(one)
    expect(
      json?.questions.map(({ cell, text, answer, exchanges }) => ({ cell, text, answer, exchanges })),
    ).toEqual(
      expected.questions.map(({ cell, text, answer, received }) => ({
        cell,
        text,
        answer,
        exchanges: received.length,
      })),
    )
    const worked = one?.questions.map(({ question }) => exchangesOf(workOut(question.calculation)))
    expect(worked?.map(({ places, zerosCrossed }) => ({ places, zerosCrossed }))).toEqual(
      expected.questions.map(({ received, zerosCrossed }) => ({ places: received, zerosCrossed })),
    )
  })

  it('gives every pupil the name, and every answer its cell, text and outcome', async () => {
    const [one] = (await reviewed()).map(reviewJson)
    const pupils = one?.pupils.map(({ nameCell, name: pupil, answers }) => ({
      nameCell,
      name: pupil,
      answers: answers.map(({ cell, typed, outcome }) => ({ cell, typed, outcome })),
    }))
    expect(pupils).toEqual(
      expected.pupils.map(({ nameCell, name: pupil, answers }) => ({
        nameCell,
        name: pupil,
        answers: answers.map(({ cell, typed, outcome }) => ({ cell, typed, outcome })),
      })),
    )
  })
})
