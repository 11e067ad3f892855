import { Button } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import type { Handout } from '../../src/lesson/handout'
import type { KeptLesson } from '../../src/lesson/kept'
import { lessonHandout } from '../../src/lesson/lessonSheets'
import { Card } from '../common/Card'
import { PRINT } from '../common/icons'
import { notationNow } from '../common/notation'
import { useBusy, useRunner } from '../common/pane'
import { openHandout } from './handover'
import { lessonFor, type LessonSetMaker, type LessonSetState } from './LessonSetMaker'

/** The lessons made in this workbook, to be opened and printed again, and a week that begins with the one that is open. */
export function LessonsMade(props: {
  readonly maker: LessonSetMaker
  readonly state: LessonSetState
}): ReactElement {
  const { maker, state } = props
  const runner = useRunner()
  const busy = useBusy()
  const print = (lessons: readonly KeptLesson[], keep?: () => Promise<void>) =>
    void runner.run('Opening the sheets to print', async () => {
      await openHandout(handoutOf(lessons))
      await keep?.()
    })
  const week = 'lesson' in state.made ? maker.week() : []
  return (
    <>
      <Card title="A week from Monday to Friday">
        <p className="quiet">
          It begins with the lesson above. Each day has the next objective and the next set number.
        </p>
        <ol className="drawn" aria-label="The week">
          {week.map((lesson) => (
            <li key={lesson.day}>{titleOf(lesson)}</li>
          ))}
        </ol>
        <Button
          icon={PRINT}
          disabled={busy || week.length === 0}
          onClick={() => {
            print(week, maker.keepWeek)
          }}
        >
          Print the week
        </Button>
      </Card>
      <Card title="Lessons made">
        {state.kept.length === 0 ? (
          <p className="quiet">
            A lesson that is printed or made is kept here, in this workbook: its objective, choices and set
            number.
          </p>
        ) : (
          <ul className="kept" aria-label="Lessons made">
            {state.kept.map((lesson) => (
              <li key={`${lesson.day} ${lesson.set} ${lesson.recipe.topic} ${lesson.recipe.kind.type}`}>
                <p>{titleOf(lesson)}</p>
                <div className="buttons">
                  {(
                    [
                      [
                        'Open',
                        () => {
                          maker.open(lesson)
                        },
                      ],
                      [
                        'Print',
                        () => {
                          print([lesson])
                        },
                      ],
                      [
                        'Next day',
                        () => {
                          maker.openNext(lesson)
                        },
                      ],
                      ['Forget', () => void maker.forget(lesson)],
                    ] as const
                  ).map(([name, act]) => (
                    <Button
                      key={name}
                      size="small"
                      disabled={busy}
                      aria-label={`${name}: ${titleOf(lesson)}`}
                      onClick={act}
                    >
                      {name}
                    </Button>
                  ))}
                </div>
              </li>
            ))}
          </ul>
        )}
      </Card>
    </>
  )
}

/** "Thu 26 Nov: Four-digit numbers, subtraction, through a zero (set 4827)". */
function titleOf({ day, set, recipe: { topic, name } }: KeptLesson): string {
  const date = new Date(`${day}T12:00:00Z`).toLocaleDateString('en-GB', {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    timeZone: 'UTC',
  })
  return `${date}: ${topic}, ${name.charAt(0).toLowerCase()}${name.slice(1)} (set ${set})`
}

/** Everything for some lessons: the pupils' sheets day by day, then all answers, and the first letter home. */
function handoutOf(lessons: readonly KeptLesson[]): Handout {
  const notation = notationNow()
  const handouts = lessons.flatMap((lesson) => {
    const made = lessonFor(lesson, lesson.set)
    return 'lesson' in made ? [lessonHandout(made.lesson, { notation, set: lesson.set })] : []
  })
  const sheets = handouts.flatMap((handout) =>
    handout.sheets.map((sheet) => ({ ...sheet, set: handout.set })),
  )
  const [answers, letters] = [true, false].map((isAnswers) =>
    sheets.filter(({ reader, title }) => reader === 'adult' && title.startsWith('Answers') === isAnswers),
  )
  const [letter] = letters ?? []
  return {
    title: handouts[0]?.title ?? 'Lessons',
    set: '',
    sheets: [
      ...sheets.filter(({ reader }) => reader === 'pupil'),
      ...(answers ?? []),
      ...(letter ? [letter] : []),
    ],
  }
}
