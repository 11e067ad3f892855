import { Button } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import { handoutByGroup } from '../../src/lesson/byGroup'
import { GRADES } from '../../src/lesson/grades'
import { Card } from '../common/Card'
import { ChoiceField } from '../common/ChoiceField'
import { PRINT } from '../common/icons'
import { notationNow } from '../common/notation'
import { useBusy, useRunner } from '../common/pane'
import { counted } from '../common/words'
import { setNumber } from '../set/choices'
import { openHandout } from './handover'
import type { LessonSetMaker, LessonSetState } from './LessonSetMaker'

/** One lesson for a mixed class: each pupil's grade by the groups of Review, to be changed, and one print of everything. */
export function ByGroup(props: {
  readonly maker: LessonSetMaker
  readonly state: LessonSetState
}): ReactElement {
  const { maker, state } = props
  const { byGroup, made, typed } = state
  const runner = useRunner()
  const busy = useBusy() || 'problem' in made
  return (
    <Card title="For the whole class, by group">
      <p className="quiet">
        Everybody works at one objective, each in the grade that suits. It goes by the groups of Review: a
        prompt for your judgement.
      </p>
      <Button disabled={busy} onClick={() => void maker.place()}>
        {byGroup ? 'Look at the class again' : 'Place the class'}
      </Button>
      {byGroup && (
        <>
          <p>
            {counted(byGroup.placed.length, 'pupil')} from {byGroup.from}:{' '}
            {GRADES.map(
              (grade) =>
                `${byGroup.placed.filter((each) => each.grade === grade).length} ${grade.toLowerCase()}`,
            ).join(', ')}
            .
          </p>
          <details>
            <summary>Who works on what</summary>
            <div className="recipe">
              {byGroup.placed.map(({ name, grade, because }, index) => (
                <ChoiceField
                  key={index}
                  label={name}
                  hint={because}
                  value={grade}
                  options={GRADES.map((each) => [each, each])}
                  onChoose={(chosen) => {
                    maker.move(index, chosen)
                  }}
                />
              ))}
            </div>
          </details>
          <Button
            icon={PRINT}
            disabled={busy}
            onClick={() =>
              void runner.run('Opening the sheets to print', async () => {
                if ('problem' in made) return
                const making = { notation: notationNow(), set: setNumber(typed) }
                await openHandout(handoutByGroup(made.lesson, byGroup.placed, making))
                await maker.keep()
              })
            }
          >
            Print all, by group
          </Button>
        </>
      )}
    </Card>
  )
}
