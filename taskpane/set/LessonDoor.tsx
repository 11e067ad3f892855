import { Button } from '@fluentui/react-components'
import type { ReactElement, Ref } from 'react'
import { Card } from '../common/Card'
import { NEXT, PRINT } from '../common/icons'
import { useBusy, useRunner, useStore } from '../common/pane'
import { OBJECTIVE } from '../lesson/objective'

/** The way to the lesson: printed as it stands, or opened to be chosen and changed. */
export function LessonDoor({
  open,
  onOpen,
}: {
  readonly open: Ref<HTMLButtonElement>
  readonly onOpen: () => void
}): ReactElement {
  const runner = useRunner()
  const busy = useBusy()
  const { recipe } = useStore(OBJECTIVE)
  const print = async () => {
    try {
      const { printTheLesson } = await import(/* webpackChunkName: "the-lesson" */ '../lesson/theLesson')
      await printTheLesson()
    } catch (error) {
      runner.tell(error)
    }
  }
  return (
    <Card title="The lesson">
      <p>“{recipe.objective}”</p>
      <p className="quiet">An example, practice in three grades, answers and a letter home.</p>
      <div className="buttons">
        <Button appearance="primary" icon={PRINT} disabled={busy} onClick={() => void print()}>
          Look and print
        </Button>
        <Button ref={open} icon={NEXT} iconPosition="after" onClick={onOpen}>
          Lesson, starters and puzzles
        </Button>
      </div>
    </Card>
  )
}
