import type { ExchangeType } from '../arithmetic/exchange'
import { RECIPES, type Recipe } from '../items/recipes'
import { TEACHING_ORDER } from '../mastery/support'
import { LESSON_QUESTIONS } from './lessonSet'
import { ladderOf } from './objectives'

/** A lesson that was made: the day, the set number, and all that it was made from, so that it can be made again. */
export interface KeptLesson {
  /** "2026-11-26" */
  readonly day: string
  readonly set: string
  readonly recipe: Recipe
  readonly practice: number
  readonly recap: number
  readonly recapTypes: readonly ExchangeType[]
  readonly otherWays: boolean
  /** A teacher's own success criteria as typed; null for ours. */
  readonly criteria: string | null
}

/** The most lessons that a workbook keeps; the oldest give way. */
export const MOST_KEPT = 100

/** Lessons with one more, the newest first; the same lesson of the same day is there once. */
export function withLesson(lessons: readonly KeptLesson[], lesson: KeptLesson): KeptLesson[] {
  const others = lessons.filter((each) => !isSame(each, lesson))
  return [lesson, ...others].sort((a, b) => b.day.localeCompare(a.day)).slice(0, MOST_KEPT)
}

/** Whether two are one lesson of one day. */
export function isSame(one: KeptLesson, other: KeptLesson): boolean {
  return one.day === other.day && one.set === other.set && one.recipe === other.recipe
}

/** Lessons as plain data to be kept. */
export function keptData(lessons: readonly KeptLesson[]): unknown[] {
  return lessons.map(({ recipe: { year, topic, operation, kind }, ...others }) => ({
    ...others,
    recipe: { year, topic, operation, type: kind.type },
  }))
}

/** Lessons as they were kept; what makes no sense is left out. */
export function readKept(data: unknown): KeptLesson[] {
  return (Array.isArray(data) ? data : []).flatMap((each) => readLesson(asRecord(each)) ?? [])
}

function readLesson(data: Readonly<Record<string, unknown>>): KeptLesson | null {
  const { day, set, practice, recap, recapTypes, otherWays, criteria } = data
  const wanted = asRecord(data.recipe)
  const recipe = RECIPES.find(
    ({ year, topic, operation, kind }) =>
      year === wanted.year &&
      topic === wanted.topic &&
      operation === wanted.operation &&
      kind.type === wanted.type,
  )
  if (!recipe || typeof day !== 'string' || !/^\d{4}-\d\d-\d\d$/.test(day)) return null
  if (
    typeof set !== 'string' ||
    set === '' ||
    !isCount(practice, LESSON_QUESTIONS.least) ||
    !isCount(recap, 0)
  )
    return null
  const types = Array.isArray(recapTypes) ? recapTypes : []
  return {
    day,
    set,
    recipe,
    practice,
    recap,
    recapTypes: TEACHING_ORDER.filter((type) => types.includes(type)),
    otherWays: otherWays === true,
    criteria: typeof criteria === 'string' ? criteria : null,
  }
}

function isCount(value: unknown, least: number): value is number {
  return Number.isInteger(value) && Number(value) >= least && Number(value) <= LESSON_QUESTIONS.most
}

function asRecord(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {}
}

/**
 * The lesson of the next school day: the next objective of the ladder (the last one again where there is none), with the next set number.
 * Success criteria and recap of the objective before do not go with it.
 */
export function nextLesson(lesson: KeptLesson): KeptLesson {
  const ladder = ladderOf(lesson.recipe)
  const recipe = ladder[ladder.indexOf(lesson.recipe) + 1] ?? lesson.recipe
  const isOther = recipe !== lesson.recipe
  return {
    ...lesson,
    day: nextSchoolDay(lesson.day),
    set: nextNumber(lesson.set),
    recipe,
    ...(isOther && { criteria: null, recapTypes: [] }),
  }
}

/** Five lessons from Monday to Friday, the first as given, each the next of the one before. */
export function weekOf(lesson: KeptLesson): KeptLesson[] {
  const week = [{ ...lesson, day: mondayFrom(lesson.day) }]
  for (let day = 1; day < 5; day++) week.push(nextLesson(week[day - 1] ?? lesson))
  return week
}

/** The Monday that a day is, or the next one after it. */
export function mondayFrom(day: string): string {
  return isWeekday(day, 1) ? day : mondayFrom(dayAfter(day))
}

/** The next day that is neither Saturday nor Sunday; holidays are not known. */
function nextSchoolDay(day: string): string {
  const next = dayAfter(day)
  return isWeekday(next, 0) || isWeekday(next, 6) ? nextSchoolDay(next) : next
}

function isWeekday(day: string, weekday: number): boolean {
  return new Date(`${day}T12:00:00Z`).getUTCDay() === weekday
}

function dayAfter(day: string): string {
  const date = new Date(`${day}T12:00:00Z`)
  date.setUTCDate(date.getUTCDate() + 1)
  return date.toISOString().slice(0, 10)
}

/** "4828" after "4827"; a word is numbered: "owls 2" after "owls". */
function nextNumber(set: string): string {
  const [, before = '', number = ''] = /^(.*?)(\d{0,12})$/.exec(set) ?? []
  return number === '' ? `${set} 2` : `${before}${Number(number) + 1}`
}
