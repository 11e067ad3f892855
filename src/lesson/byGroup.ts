import { FAULTS } from '../answers/faults'
import type { Recipe } from '../items/recipes'
import type { Judgement } from '../mastery/standing'
import { supportGroups, TEACHING_ORDER, type GroupNeed } from '../mastery/support'
import { GRADES, type Grade } from './grades'
import type { Block, Handout, Making, Sheet } from './handout'
import type { Lesson } from './lessonSet'
import {
  answerSheet,
  exampleSheet,
  homeLetter,
  lessonTitle,
  practiceSheets,
  togetherSheet,
} from './lessonSheets'
import { operationOf } from './words'

/** A pupil, with the verdict on the pupil. */
export interface JudgedPupil {
  readonly name: string
  readonly judgement: Judgement
}

/** A pupil's grade in a lesson, and the sentence that speaks for it, for the teacher alone. */
export interface Placed {
  readonly name: string
  readonly grade: Grade
  readonly because: string
}

/**
 * The grade in which each pupil of a class begins, in the pupils' order: a prompt for the teacher's judgement. The groups of Review whose
 * need lies in the lesson's operation, at or before its objective, take the way in; of the others those secure in the objective
 * go deeper; all others work at the objective.
 */
export function placePupils(pupils: readonly JudgedPupil[], recipe: Recipe): Placed[] {
  const supported = new Set(
    supportGroups(pupils, Math.max(1, pupils.length))
      .filter(({ need }) => leadsIn(need, recipe))
      .flatMap((group) => group.pupils),
  )
  return pupils.map((pupil) => {
    const { name, judgement } = pupil
    if (supported.has(pupil)) return { name, grade: 'The way in', because: judgement.need.sentence }
    return isSecureIn(judgement, recipe)
      ? { name, grade: 'Deeper', because: 'Secure in what the lesson practises.' }
      : { name, grade: 'The objective', because: 'Not yet seen to be secure in what the lesson practises.' }
  })
}

function leadsIn({ kind, fault, type }: GroupNeed, { operation, kind: objective }: Recipe): boolean {
  if (kind === 'fault') return FAULTS.some((each) => each.id === fault && each.operation === operation)
  if (kind === 'no pattern' || type === null) return true
  if (operationOf(type) !== operation) return false
  return objective.type === 'any' || TEACHING_ORDER.indexOf(type) <= TEACHING_ORDER.indexOf(objective.type)
}

/** Secure in the objective's type; where it is mixed, in every type of its operation that was answered. */
function isSecureIn({ byType, needsSupport }: Judgement, { operation, kind }: Recipe): boolean {
  const own = byType.filter(({ type }) =>
    kind.type === 'any' ? operationOf(type) === operation : type === kind.type,
  )
  return !needsSupport && own.length > 0 && own.every(({ status }) => status === 'secure')
}

/**
 * A lesson printed for a whole class: the example; a sheet to begin with for every two; each pupil's practice with the name on it, grade by
 * grade, without a word of why; then for the teacher who works on what, the answers and the letter home.
 */
export function handoutByGroup(
  lesson: Lesson,
  placed: readonly Placed[],
  { notation, set }: Making,
): Handout {
  const sheets = practiceSheets(lesson, notation)
  const named = GRADES.flatMap((grade, index) => {
    const sheet = sheets[index]
    return sheet ? inGrade(placed, grade).map(({ name }) => withName(sheet, name)) : []
  })
  const together = Array.from({ length: Math.ceil(placed.length / 2) }, () => togetherSheet(lesson))
  return {
    title: lessonTitle(lesson),
    set,
    sheets: [
      exampleSheet(lesson, notation),
      ...together,
      ...named,
      placingSheet(placed),
      answerSheet(lesson, notation),
      homeLetter(lesson, notation),
    ],
  }
}

function inGrade(placed: readonly Placed[], grade: Grade): Placed[] {
  return placed.filter((each) => each.grade === grade)
}

function withName({ title, blocks, ...sheet }: Sheet, name: string): Sheet {
  const others = blocks.filter((block) => block.kind !== 'fields')
  return { ...sheet, title: `${name}. ${title}`, blocks: [{ kind: 'fields', names: ['Date'] }, ...others] }
}

function placingSheet(placed: readonly Placed[]): Sheet {
  return {
    title: 'Who works on what',
    reader: 'adult',
    blocks: [
      { kind: 'text', text: 'By the answers so far: a prompt for your judgement. Not for children to see.' },
      ...GRADES.flatMap((grade): Block[] => {
        const pupils = inGrade(placed, grade)
        if (pupils.length === 0) return []
        return [
          { kind: 'heading', text: grade },
          { kind: 'list', items: pupils.map(({ name, because }) => `${name}: ${because}`) },
        ]
      }),
    ],
  }
}
