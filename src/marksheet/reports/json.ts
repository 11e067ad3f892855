import { numeralText } from '../../arithmetic/numeral'
import { diagnoseReview } from './diagnose'
import { addressOf } from '../layout/matrix'
import type { Review } from '../marking/review'

/**
 * A review and its diagnosis as plain JSON data with A1 addresses: the command line's contract. Answers and typed texts are strings;
 * `faults` are those named to the teacher, likeliest first.
 */
export function reviewJson(review: Review) {
  const { sheet, orientation, marked, questions, pupils } = review
  const diagnoses = diagnoseReview(review)
  return {
    sheet,
    orientation,
    marked,
    questions: questions.map((question) => ({
      cell: addressOf(question),
      text: question.text,
      answer: numeralText(question.key.numeral),
      exchanges: question.exchanges.places.length,
      type: question.exchanges.type,
      skills: question.exchanges.skills,
    })),
    pupils: pupils.map(({ name, nameCells, answers, typed, outcomes, judgement }, pupil) => ({
      nameCell: nameCells.slice(0, 1).map(addressOf).join(''),
      name,
      answers: answers.map((cell, index) => ({
        cell: addressOf(cell),
        questionCell: questions
          .slice(cell.question, cell.question + 1)
          .map(addressOf)
          .join(''),
        typed: typed[index] ?? '',
        outcome: outcomes[index],
        fault: diagnoses[pupil]?.faults[index] ?? null,
      })),
      faults: (diagnoses[pupil]?.diagnosis.named ?? []).map(({ fault, probability, explains }) => ({
        id: fault,
        probability,
        explains: explains.flatMap((index) => answers.slice(index, index + 1)).map(addressOf),
      })),
      ...judgement,
    })),
  }
}
