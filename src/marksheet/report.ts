import { numeralText } from '../arithmetic/numeral'
import { addressOf } from './matrix'
import type { Review } from './review'

/** A review as plain JSON data with A1 addresses: the command line's contract. Answers and typed texts are strings. */
export function reviewJson({ sheet, orientation, marked, questions, pupils }: Review) {
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
    pupils: pupils.map(({ name, nameCells, answers, typed, outcomes, judgement }) => ({
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
        fault: null,
      })),
      faults: [],
      ...judgement,
    })),
  }
}
