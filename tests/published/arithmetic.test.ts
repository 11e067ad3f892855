import { describe, expect, it } from 'vitest'
import { workOut } from '../../src/arithmetic/columns'
import { exchangesOf } from '../../src/arithmetic/exchange'
import { numeralText } from '../../src/arithmetic/numeral'
import { stateAfter, stepsOf } from '../../src/arithmetic/steps'
import { layoutOf } from '../../src/lesson/model/grid'
import { asked } from '../support/asked'

/** The answer of a question as the columns, the steps and the layout each give it. */
function answersTo(text: string) {
  const question = asked(text)
  const steps = stepsOf(question)
  const written = workOut(question.calculation)
  const fromSteps = stateAfter(question, steps.length).columns.map(({ answer }) => answer ?? '')
  return {
    inColumns: numeralText(written.answer),
    inSteps: fromSteps.reverse().join(''),
    inLayout: layoutOf(question).at(-1)?.join(''),
    exchanges: exchangesOf(written).places.length,
    stepKinds: steps.map(({ kind }) => kind),
  }
}

// Department for Education (2013), National curriculum in England, Mathematics Appendix 1: formal written methods
// (figures from memory; Open Government Licence).
describe('the worked examples of the National curriculum in England', () => {
  it.each([
    ['789 + 642', '1431', 3],
    ['874 − 523', '351', 0],
    ['932 − 457', '475', 2],
  ])('%s = %s', (text, answer, exchanges) => {
    const found = answersTo(text)
    expect(found).toMatchObject({ inColumns: answer, inSteps: answer, inLayout: answer, exchanges })
    expect(found.stepKinds.filter((kind) => kind === 'exchange' || kind === 'carry')).toHaveLength(exchanges)
  })
})

// Right answers computed by an independent reference program.
describe('questions that tell faults apart', () => {
  it.each([
    ['932 − 457', '475'],
    ['305 − 128', '177'],
    ['4003 − 1567', '2436'],
    ['5040 − 2308', '2732'],
    ['6105 − 2350', '3755'],
    ['8000 − 2999', '5001'],
    ['7214 − 86', '7128'],
    ['503 − 46', '457'],
    ['789 + 642', '1431'],
    ['467 + 258', '725'],
    ['3856 + 479', '4335'],
  ])('%s = %s', (text, answer) => {
    expect(answersTo(text)).toMatchObject({ inColumns: answer, inSteps: answer, inLayout: answer })
  })
})
