import { numeralText } from '../../arithmetic/numeral'
import { skillStandings } from '../../mastery/skills'
import { addressOf } from '../layout/matrix'
import { evidenceOf, type Review } from '../marking/review'

/**
 * A review and its diagnosis as plain JSON data with A1 addresses: the command line's contract. Answers and typed texts are strings;
 * `faults` are those named to the teacher, likeliest first.
 */
export function reviewJson(review: Review) {
  const { sheet, orientation, marked, questions, pupils } = review
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
    pupils: pupils.map(({ name, nameCells, answers, typed, outcomes, diagnosis, faults, judgement }) => ({
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
        fault: faults[index] ?? null,
      })),
      faults: diagnosis.named.map(({ fault, probability, explains }) => ({
        id: fault,
        probability,
        explains: explains.flatMap((index) => answers.slice(index, index + 1)).map(addressOf),
      })),
      need: judgement.need,
      byFamily: judgement.byFamily,
      byType: judgement.byType,
      bySkill: skillStandings(
        answers.flatMap((cell) => questions[cell.question]?.exchanges ?? []),
        outcomes.map(evidenceOf),
      ),
      needsSupport: judgement.needsSupport,
    })),
  }
}
