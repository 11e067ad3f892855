import { lessonHandout } from '../../src/lesson/lessonSheets'
import { Problem } from '../../src/office/edit/errors'
import { notationNow } from '../common/notation'
import { RUNNER } from '../common/pane'
import { setNumber } from '../set/choices'
import { openHandout } from './handover'
import { LessonSetMaker } from './LessonSetMaker'

/** The one lesson that is being made, at the lesson's door and behind it. */
export const THE_LESSON = new LessonSetMaker(RUNNER)

/** Opens the window that shows the lesson as it stands, to be printed. */
export async function printTheLesson(): Promise<void> {
  await THE_LESSON.look()
  const { made, typed } = THE_LESSON.state()
  await RUNNER.run('Opening the sheets to print', async () => {
    if ('problem' in made) throw new Problem(made.problem, 'Choose another objective or set number.')
    await openHandout(lessonHandout(made.lesson, { notation: notationNow(), set: setNumber(typed) }))
    await THE_LESSON.keep()
  })
}
