import { lazy, Suspense, useEffect, useRef, useState, type ReactElement } from 'react'
import { flushSync } from 'react-dom'
import { LoadGuard } from '../common/LoadGuard'
import { useRunner, useStore } from '../common/pane'
import { useOtherSheet, useTyping } from '../common/watching'
import { sameForAll } from '../home/atHome'
import { HomeCard } from '../home/HomeCard'
import { LessonDoor } from './LessonDoor'
import { PreviewCard } from './PreviewCard'
import { RecipeCard } from './RecipeCard'
import './set.css'
import { Setter } from './setter'
import { WriteCard } from './WriteCard'

const LessonPage = lazy(async () => ({
  default: (await import(/* webpackChunkName: "lesson" */ '../lesson/LessonPage')).LessonPage,
}))

/** Set: the lesson's door; then what kind of set, the set that was drawn, and taking it to the workbook. */
export function SetArea(): ReactElement {
  const runner = useRunner()
  const [setter] = useState(() => new Setter(runner))
  const state = useStore(setter)
  useEffect(() => {
    void setter.look()
    const unwatch = setter.watch()
    return unwatch
  }, [setter])
  useOtherSheet(setter.look)
  useTyping(setter.catchUp)
  const [inLesson, setInLesson] = useState(false)
  const [hasLesson, setHasLesson] = useState(false)
  const more = useRef<HTMLButtonElement>(null)
  return (
    <>
      <div hidden={inLesson}>
        <LessonDoor
          open={more}
          onOpen={() => {
            setHasLesson(true)
            setInLesson(true)
          }}
        />
        <RecipeCard choices={state.choices} onChoose={setter.choose} />
        <PreviewCard setter={setter} state={state} />
        <WriteCard setter={setter} state={state} />
        {'questions' in state.made && (
          <HomeCard atHome={sameForAll(state.made.questions, state.pupils?.list.names ?? [])} />
        )}
      </div>
      {hasLesson && (
        <div hidden={!inLesson}>
          <LoadGuard name="Lesson, starters and puzzles">
            <Suspense fallback={<p role="status">Opening Lesson, starters and puzzles …</p>}>
              <LessonPage
                onBack={() => {
                  flushSync(() => {
                    setInLesson(false)
                  })
                  more.current?.focus()
                }}
              />
            </Suspense>
          </LoadGuard>
        </div>
      )}
    </>
  )
}
