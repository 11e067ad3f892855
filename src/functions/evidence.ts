import { prepareDiagnosis } from '../answers/diagnosis'
import { FAULTS } from '../answers/faults'
import { markAnswer, readTyped, type AnswerKey, type Outcome } from '../answers/typed'
import { workOut } from '../arithmetic/columns'
import { exchangesOf } from '../arithmetic/exchange'
import { diagnoseAnswers, type PupilDiagnosis } from '../marksheet/marking/diagnose'
import { evidenceOf } from '../marksheet/marking/review'
import type { SkillStanding } from '../mastery/judge'
import { judge } from '../mastery/need'
import { skillStandings } from '../mastery/skills'
import { countOf, standings, type Judgement } from '../mastery/standing'
import { cellOf, unusable, type Asked, type AskedQuestion } from './cells'

/** Marks what a host passed for a typed answer. The number 0 may be an empty cell: it is blank unless the answer is 0. */
export function outcomeOf(typed: unknown, key: AnswerKey): Outcome {
  const cell = cellOf(typed)
  return cell === 0 && key.value !== '0' ? 'blank' : markAnswer(cell, key)
}

/** One pupil's answers, judged. */
export interface Judged {
  readonly judgement: Judgement
  readonly why: PupilDiagnosis
  readonly skills: () => readonly SkillStanding[]
}

/**
 * Prepares the questions of a row of cells, empty ones left out, for judging pupils by their rows of typed answers. Throws
 * #VALUE! where a cell holds something else than a question.
 */
export function prepareJudging(asked: readonly Asked[]): { judge(typed: readonly unknown[]): Judged } {
  const questions = asked.flatMap((one, index) => {
    if (one === null) return []
    const found = questionOf(one)
    return [{ index, ...found, exchanges: exchangesOf(workOut(found.question.calculation)) }]
  })
  const prepared = prepareDiagnosis(questions.map(({ question }) => question))
  return {
    judge: (typed) => {
      const told = questions.map(({ index, key, exchanges }) => ({
        type: exchanges.type,
        told: evidenceOf(outcomeOf(typed[index], key)),
      }))
      const why = diagnoseAnswers(
        prepared,
        questions.map(({ index, key }) => ({
          answer: key.value,
          value: valueOf(typed[index], key),
        })),
      )
      const evidence = told.map((each) => each.told)
      return {
        judgement: judge(standings([told]), {
          ...countOf(evidence),
          named: why.diagnosis.named,
          typing: why.typing,
        }),
        why,
        skills: () =>
          skillStandings(
            questions.map(({ exchanges }) => exchanges),
            evidence,
          ),
      }
    },
  }
}

/** What was typed as a value, null where it tells nothing. */
function valueOf(typed: unknown, key: AnswerKey): string | null {
  const outcome = outcomeOf(typed, key)
  if (outcome !== 'correct' && outcome !== 'incorrect') return null
  const read = readTyped(cellOf(typed), key.unit)
  return read.kind === 'number' ? read.value : null
}

function questionOf(asked: NonNullable<Asked>): AskedQuestion {
  if ('problem' in asked) throw unusable(asked.problem)
  return asked
}

/**
 * What each of a pupil's answers most likely comes from, as sentences in the order of the cells: the fault named for the pupil where it
 * explains the answer, else the commonest that gives it; '' where an answer is not wrong or no fault gives it. Cells that hold no
 * question are left out of the diagnosis.
 */
export function whyWrong(asked: readonly Asked[], typed: readonly unknown[]): string[] {
  const usable = asked.map((one) => (one !== null && 'problem' in one ? null : one))
  const { why } = prepareJudging(usable).judge(typed)
  const faults = why.faults.values()
  return usable.map((one) => {
    const fault = one === null ? null : faults.next().value
    if (one === null || !fault) return ''
    const { operation } = one.question.calculation
    return FAULTS.find(({ id, operation: of }) => id === fault && of === operation)?.sentence ?? ''
  })
}
