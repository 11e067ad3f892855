import { Button } from '@fluentui/react-components'
import { useMemo, useState, type ReactElement } from 'react'
import { FAULTS } from '../../../src/answers/faults'
import type { Area } from '../../../src/marksheet/layout/matrix'
import {
  faultGroups,
  workAgainst,
  type DiagnosedPupil,
  type FaultGroup,
} from '../../../src/marksheet/reports/needs'
import { followUpFor, type SetWish } from '../../../src/marksheet/setting/nextSet'
import { areaOf } from '../../../src/marksheet/layout/matrix'
import { Card } from '../../common/Card'
import { useBusy } from '../../common/pane'
import { Reason } from '../../common/Reason'
import { counted } from '../../common/words'
import { faultOf } from './faults'
import { QuestionSet, Work, type OnWrite } from './NextSet'

interface Doing {
  readonly wish: SetWish
  readonly onShow: (area: Area) => void
  readonly onWrite: OnWrite
}

/** Why answers are wrong: the faults about in the class with a group each, the pupils one by one, and what is still open. */
export function Why(
  props: {
    readonly pupils: readonly DiagnosedPupil[]
    readonly onComment: (on: boolean) => void
  } & Doing,
): ReactElement {
  const { pupils, onComment, ...doing } = props
  const groups = useMemo(() => faultGroups(pupils), [pupils])
  const named = pupils.filter(({ diagnosis }) => diagnosis.verdict === 'fault named')
  const open = pupils.filter(({ diagnosis }) => diagnosis.verdict === 'more questions would tell')
  const none = pupils.filter(({ diagnosis }) => diagnosis.verdict === 'no pattern')
  return (
    <>
      <Card title="Likeliest faults in the class">
        <p className="quiet">
          A fault is a guess from the answers, for your own judgement, never a verdict on a child: look at the
          working.
        </p>
        {groups.length === 0 && <p>No fault is named for any pupil, as far as these answers show.</p>}
        {groups.map((group) => (
          <Group key={group.fault} group={group} {...doing} />
        ))}
      </Card>
      {named.length > 0 && (
        <Card title="Pupil by pupil">
          <ul className="reasons">
            {named.map((pupil) => (
              <li key={`${pupil.review} ${pupil.index}`}>
                <Reason pupil={pupil} onShow={doing.onShow} />
              </li>
            ))}
          </ul>
        </Card>
      )}
      {open.length > 0 && (
        <Card title="More questions would tell">
          <ul className="reasons">
            {open.map((pupil) => (
              <li key={`${pupil.review} ${pupil.index}`}>
                <Reason pupil={pupil} onShow={doing.onShow} />
                <FollowUp pupil={pupil} {...doing} />
              </li>
            ))}
          </ul>
        </Card>
      )}
      {none.length > 0 && (
        <Card title="No pattern">
          <p>Look at the working of {none.map(({ name }) => name).join(', ')}.</p>
        </Card>
      )}
      <Comments onComment={onComment} />
    </>
  )
}

function Group({ group, wish, onShow, onWrite }: { readonly group: FaultGroup } & Doing) {
  const { fault, pupils, shownBy } = group
  const work = useMemo(() => workAgainst(fault, wish), [fault, wish])
  const entry = faultOf(fault)
  return (
    <section className="group">
      <h3>{entry?.sentence}</h3>
      <p>
        {counted(pupils.length, 'pupil')}; {counted(shownBy.length, 'question')} of these would show it.
      </p>
      <ul className="names">
        {pupils.map(({ name, review, index, pupil }) => (
          <li key={`${review} ${index}`}>
            <Button
              appearance="outline"
              size="small"
              onClick={() => {
                onShow(areaOf([pupil.nameCells]))
              }}
            >
              {name}
            </Button>
          </li>
        ))}
      </ul>
      <p>
        <strong>What helps: </strong>
        {entry?.help}
      </p>
      <Work
        work={work}
        fault={fault}
        whose={entry?.sentence ?? ''}
        names={pupils.map(({ name }) => name)}
        onWrite={onWrite}
      />
    </section>
  )
}

const FOLLOW_UP = 4

function FollowUp({ pupil: { name, diagnosis }, wish, onWrite }: { readonly pupil: DiagnosedPupil } & Doing) {
  const [shown, setShown] = useState(false)
  const followUp = useMemo(
    () => (shown ? followUpFor(diagnosis.open, { ...wish, count: FOLLOW_UP }) : null),
    [shown, diagnosis, wish],
  )
  if (followUp === null)
    return (
      <Button
        size="small"
        aria-label={`Questions that would tell: ${name}`}
        onClick={() => {
          setShown(true)
        }}
      >
        Questions that would tell
      </Button>
    )
  const names = followUp.untold.map(({ ways }) => ways.map(wayInWords).join(' and '))
  return (
    <>
      <QuestionSet questions={followUp.questions} whose={name} onWrite={onWrite} />
      <p className="quiet">
        {names.length === 0
          ? 'Each of these ways of working gives answers of its own here.'
          : `They cannot tell apart: ${names.join('; ')}.`}
      </p>
    </>
  )
}

function wayInWords(way: string): string {
  return way === 'right'
    ? 'the right method'
    : `“${FAULTS.find(({ id }) => id === way)?.sentence.replace(/\.$/, '') ?? way}”`
}

function Comments({ onComment }: { readonly onComment: (on: boolean) => void }) {
  const busy = useBusy()
  return (
    <Card title="Comments in the sheet">
      <p>
        The likeliest reason as a comment on each wrong answer that has one. Whoever opens the sheet can read
        them.
      </p>
      <div className="buttons">
        <Button
          disabled={busy}
          onClick={() => {
            onComment(true)
          }}
        >
          Write comments
        </Button>
        <Button
          disabled={busy}
          onClick={() => {
            onComment(false)
          }}
        >
          Take comments off
        </Button>
      </div>
    </Card>
  )
}
