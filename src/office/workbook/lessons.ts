import { keptData, readKept, withLesson, isSame, type KeptLesson } from '../../lesson/kept'
import { LESSONS_KEY, saveSettings } from './settings'

/** The lessons made in this workbook, the newest first. */
export function readLessons(): KeptLesson[] {
  return readKept(Office.context.document.settings.get(LESSONS_KEY))
}

/** Keeps lessons in the workbook besides those that are there; they are saved with it. Throws Problem. */
export async function keepLessons(lessons: readonly KeptLesson[]): Promise<KeptLesson[]> {
  return await keep(lessons.reduce<KeptLesson[]>(withLesson, readLessons()))
}

/** Takes a lesson off the list. Throws Problem. */
export async function forgetLesson(lesson: KeptLesson): Promise<KeptLesson[]> {
  return await keep(readLessons().filter((each) => !isSame(each, lesson)))
}

async function keep(lessons: KeptLesson[]): Promise<KeptLesson[]> {
  Office.context.document.settings.set(LESSONS_KEY, keptData(lessons))
  await saveSettings()
  return lessons
}
