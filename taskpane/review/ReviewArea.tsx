import { Button } from '@fluentui/react-components'
import { useMemo, useState, type ReactElement } from 'react'
import { questionsIn } from '../../src/marksheet/record/record'
import type { SetWish } from '../../src/marksheet/setting/nextSet'
import { planReports, pupilReport } from '../../src/marksheet/reports/pupilReport'
import { Card } from '../common/Card'
import { AGAIN } from '../common/icons'
import { FRONT } from '../common/front'
import { useBusy, useRunner, useRunnerState, useStore } from '../common/pane'
import { useFront, useTyping } from '../common/watching'
import { ShareCard } from './record/ShareCard'
import { Tabs } from '../common/Tabs'
import { dayInWords, dayOf } from './record/day'
import { Groups } from './faults/Groups'
import { HeatMap } from './pupils/HeatMap'
import { AddToRecord, RecordCard, Sheets } from './record/RecordTab'
import type { Person } from './pupils/people'
import { PraiseCard } from './record/Praise'
import { NeedList } from './pupils/NeedList'
import { PupilPage } from './pupils/PupilPage'
import { Questions } from './faults/Questions'
import './review.css'
import { Reviewer, type ReviewerState } from './reviewer'
import { SourceChoice, usePeople, type Source } from './pupils/SourceChoice'
import { weekPage } from './record/week'
import { Why } from './faults/Why'
import { WriteOver } from './WriteOver'

const PARTS = [
  { id: 'pupils', name: 'Pupils' },
  { id: 'questions', name: 'Questions' },
  { id: 'why', name: 'Why' },
  { id: 'groups', name: 'Groups' },
  { id: 'keep', name: 'Record' },
] as const
type PartId = (typeof PARTS)[number]['id']

const SET_SIZE = 6

/** Review: the class by type, by question, by fault and by group; a pupil by himself; and Record. */
export function ReviewArea(): ReactElement {
  const runner = useRunner()
  const [reviewer] = useState(() => new Reviewer(runner, FRONT))
  const state = useStore(reviewer)
  const { writes } = useRunnerState()
  useFront(reviewer.look, writes)
  useTyping(reviewer.noteTyping)
  return state.seen === null ? <Waiting /> : <Reviewing reviewer={reviewer} state={state} />
}

function LookAgain() {
  const busy = useBusy()
  return (
    <Button size="small" appearance="subtle" icon={AGAIN} disabled={busy} onClick={FRONT.turn}>
      Look again
    </Button>
  )
}

function Waiting() {
  const busy = useBusy()
  if (busy) return <p className="quiet">Looking at the sheet …</p>
  return (
    <Card title="The sheet could not be read">
      <LookAgain />
    </Card>
  )
}

interface Parts {
  readonly reviewer: Reviewer
  readonly state: ReviewerState
}

function Reviewing({ reviewer, state }: Parts) {
  const [source, setSource] = useState<Source>({ kind: 'sheet' })
  const [part, setPart] = useState<PartId>('pupils')
  const [opened, setOpened] = useState<string | null>(null)
  const [draw, setDraw] = useState(1)
  const { seen, record, settings } = state
  const today = dayOf(new Date())
  const people = usePeople(state, source)
  const wish = useMemo(
    (): SetWish => ({
      count: SET_SIZE,
      seed: `${today} ${draw}`,
      like: people.flatMap(({ asked }) => asked),
      avoid: questionsIn(record?.rows ?? []),
    }),
    [today, draw, people, record],
  )
  const person = people.find(({ key }) => key === opened)
  const onWrite = (questions: SetWish['like'], direction: 'across' | 'down') =>
    void reviewer.writeQuestions(questions, direction)
  const onShow = (area: Parameters<Reviewer['show']>[0]) => void reviewer.show(area)
  const onOpen = ({ key }: Person) => {
    setOpened(key)
  }
  const date = dayInWords(today)
  const report = (each: Person) => pupilReport(each.name, each.judgement, { ...wish, like: each.asked })
  if (person)
    return (
      <>
        <PupilPage
          person={person}
          wish={{ ...wish, like: person.asked }}
          onBack={() => {
            setOpened(null)
          }}
          onShow={onShow}
          onWrite={onWrite}
          onPrint={(own) => void reviewer.writePages(planReports([own], date), 'many')}
        />
        <WriteOver reviewer={reviewer} state={state} />
      </>
    )
  const isSheet = source.kind === 'sheet'
  const className = isSheet ? settings.className : source.className
  const shown = PARTS.filter(({ id }) => isSheet || (id !== 'questions' && id !== 'why'))
  return (
    <>
      <div className="heading">
        <h2 className="sheet-name">{isSheet ? seen?.reading.name : `${source.className}, over the weeks`}</h2>
        <LookAgain />
      </div>
      {state.edited && (
        <p className="quiet" role="status">
          Changed since: press Look again.
        </p>
      )}
      <SourceChoice
        state={state}
        source={source}
        onChoose={(chosen) => {
          setSource(chosen)
          if (chosen.kind === 'record' && (part === 'questions' || part === 'why')) setPart('pupils')
        }}
      />
      <Tabs
        label="Parts of the review"
        areas={shown}
        open={part}
        onOpen={(id) => {
          setPart(PARTS.find((each) => each.id === id)?.id ?? 'pupils')
        }}
      />
      <div role="tabpanel" id={`area-${part}`} aria-labelledby={`tab-${part}`} className="part">
        {people.length === 0 && part !== 'keep' && <NoPupils />}
        {people.length > 0 && part === 'pupils' && (
          <>
            <NeedList people={people} onOpen={onOpen} />
            <HeatMap people={people} onOpen={onOpen} />
          </>
        )}
        {people.length > 0 && part === 'questions' && seen && (
          <Questions reviews={seen.reviews} onShow={onShow} />
        )}
        {people.length > 0 && part === 'why' && seen && (
          <Why
            pupils={seen.pupils}
            wish={wish}
            onShow={onShow}
            onWrite={onWrite}
            onComment={(on) => void reviewer.comment(on)}
          />
        )}
        {people.length > 0 && part === 'groups' && (
          <Groups
            people={people}
            size={settings.groupSize}
            wish={wish}
            onSize={(groupSize) => void reviewer.keep({ groupSize })}
            onOpen={onOpen}
            onWrite={onWrite}
          />
        )}
        {people.length > 0 && (part === 'groups' || part === 'why') && (
          <Button
            size="small"
            onClick={() => {
              setDraw(draw + 1)
            }}
          >
            Draw other questions
          </Button>
        )}
        {part === 'keep' && (
          <>
            <AddToRecord
              key={seen?.reading.id}
              reviewer={reviewer}
              state={isSheet ? state : { ...state, seen: null }}
              today={today}
            />
            <RecordCard reviewer={reviewer} state={state} today={today} />
            <PraiseCard
              key={className}
              state={state}
              className={className}
              onWrite={(printed) => void reviewer.writePages(printed, 'many')}
            />
          </>
        )}
        {people.length > 0 && part === 'keep' && (
          <Sheets
            hasSheet={isSheet}
            onWeek={() =>
              void reviewer.writePages(
                weekPage(people, { size: settings.groupSize, wish, className, day: today }),
                'one',
              )
            }
            onReports={() => void reviewer.writePages(planReports(people.map(report), date), 'many')}
            onMastery={() => void reviewer.writeMastery()}
          />
        )}
        {isSheet && seen && people.length > 0 && part === 'keep' && (
          <ShareCard sheetName={seen.reading.name} onShare={(how) => void reviewer.share(how)} />
        )}
      </div>
      <WriteOver reviewer={reviewer} state={state} />
    </>
  )
}

function NoPupils() {
  return (
    <Card title="No marksheet here">
      <p>
        Open the sheet that holds the pupils’ answers. Where it is not found, Mark lets you select its parts.
      </p>
    </Card>
  )
}
