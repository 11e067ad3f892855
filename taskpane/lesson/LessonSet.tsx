import { Button, Checkbox, Field, Textarea } from '@fluentui/react-components'
import { useEffect, useMemo, type ReactElement } from 'react'
import { LESSON_QUESTIONS, type Lesson } from '../../src/lesson/lessonSet'
import { lessonHandout } from '../../src/lesson/lessonSheets'
import { inSeries, typesInWords } from '../../src/lesson/words'
import type { WorkedQuestion } from '../../src/lesson/worked'
import { Card } from '../common/Card'
import { ChoiceField } from '../common/ChoiceField'
import { CELLS, SELECT } from '../common/icons'
import { useNotation } from '../common/notation'
import { useBusy, useRunnerState, useStore } from '../common/pane'
import { useOtherSheet } from '../common/watching'
import { counted } from '../common/words'
import { setNumber } from '../set/choices'
import { sameForAll } from '../home/atHome'
import { HomeCard } from '../home/HomeCard'
import { SetNumber } from '../set/SetNumber'
import { namesFound } from '../set/WriteCard'
import { ByGroup } from './ByGroup'
import { CountField } from './CountField'
import {
  ON_MARKSHEET,
  questionsFor,
  type LessonSetMaker,
  type LessonSetState,
  type OnMarksheet,
} from './LessonSetMaker'
import { LessonsMade } from './LessonsMade'
import { RecipeChoice } from './RecipeChoice'
import { Take } from './Take'
import { THE_LESSON } from './theLesson'

interface Parts {
  readonly maker: LessonSetMaker
  readonly state: LessonSetState
}

/** A lesson from its objective: what is in it, its success criteria, and everything onto sheets in one action. */
export function LessonSet(): ReactElement {
  const maker = THE_LESSON
  const state = useStore(maker)
  const { writes } = useRunnerState()
  useOtherSheet(maker.look)
  useEffect(() => {
    void maker.look()
  }, [maker, writes])
  const { made } = state
  const notation = useNotation()
  const handout = useMemo(
    () => ('lesson' in made ? lessonHandout(made.lesson, { notation, set: setNumber(state.typed) }) : null),
    [made, notation, state.typed],
  )
  return (
    <>
      <Take handout={handout} onlyPrints onPrint={maker.keep} />
      <ObjectiveCard maker={maker} state={state} />
      <LessonCard maker={maker} state={state} />
      {'lesson' in made && <CriteriaCard maker={maker} state={state} lesson={made.lesson} />}
      <MakeCard maker={maker} state={state} />
      <ByGroup maker={maker} state={state} />
      {'lesson' in made && (
        <HomeCard
          atHome={sameForAll(
            questionsFor(made.lesson, takenHome(state.choices.onMarksheet)),
            state.pupils?.list.names ?? [],
          )}
        />
      )}
      <LessonsMade maker={maker} state={state} />
    </>
  )
}

/** What is answered at home: what stands on the marksheet, or all grades where there is none. */
function takenHome(onMarksheet: OnMarksheet): OnMarksheet {
  return onMarksheet === 'none' ? 'grades' : onMarksheet
}

function ObjectiveCard({ maker, state }: Parts) {
  const { recipe, practice, recap, otherWays } = state.choices
  return (
    <Card title="The objective">
      <div className="recipe">
        <RecipeChoice
          recipe={recipe}
          onChoose={(chosen) => {
            maker.choose({ recipe: chosen })
          }}
        />
        <div className="halves">
          <CountField
            label="In each grade"
            least={LESSON_QUESTIONS.least}
            most={LESSON_QUESTIONS.most}
            value={practice}
            onChoose={(count) => {
              maker.choose({ practice: count })
            }}
          />
          <CountField
            label="In the recap"
            least={0}
            most={LESSON_QUESTIONS.most}
            value={recap}
            onChoose={(count) => {
              maker.choose({ recap: count })
            }}
          />
        </div>
        <RecapField maker={maker} state={state} />
        <Checkbox
          label="Talk about other ways before the example"
          checked={otherWays}
          onChange={(_, { checked }) => {
            maker.choose({ otherWays: checked === true })
          }}
        />
      </div>
    </Card>
  )
}

function LessonCard({ maker, state }: Parts) {
  const { made, typed } = state
  return (
    <Card title="The lesson">
      <SetNumber typed={typed} onType={maker.type} onAgain={maker.again} />
      {'problem' in made ? (
        <p className="no-set" role="alert">
          <strong>! No lesson.</strong> {made.problem}
        </p>
      ) : (
        <>
          {state.repeated.length > 0 && (
            <p>
              {counted(state.repeated.length, 'question')} of this set{' '}
              {state.repeated.length === 1 ? 'is' : 'are'} in Record already: {inSeries(state.repeated)}.
              Another draw finds new ones.
            </p>
          )}
          <Preview lesson={made.lesson} />
        </>
      )}
    </Card>
  )
}

/** What the recap is drawn from. By Record it is chosen once, so that the same number stays the same lesson. */
function RecapField({ maker, state: { choices, least, className } }: Parts) {
  const { recapTypes } = choices
  const offered = recapTypes.length > 0 ? recapTypes : least
  if (offered.length === 0) return null
  return (
    <ChoiceField
      label="Recap from"
      hint={recapTypes.length > 0 ? startingLarge(`${typesInWords(recapTypes)}.`) : undefined}
      value={recapTypes.length > 0 ? 'least' : 'all'}
      options={[
        ['all', 'All that comes before'],
        ['least', `What ${className === '' ? 'the class' : className} is least secure in, by Record`],
      ]}
      onChoose={(chosen) => {
        maker.choose({ recapTypes: chosen === 'least' ? least : [] })
      }}
    />
  )
}

const startingLarge = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

function Preview({ lesson }: { readonly lesson: Lesson }) {
  const { model, partner, practice, recap } = lesson
  return (
    <>
      <Fold name="Modelled example and partner question" questions={[model, partner]} />
      {practice.map(({ grade, questions }) => (
        <Fold key={grade} name={grade} questions={questions} />
      ))}
      {recap.length > 0 ? (
        <Fold name="Recap" questions={recap} />
      ) : (
        <p className="quiet">No recap: nothing comes before this objective, or none was wanted.</p>
      )}
    </>
  )
}

function Fold(props: { readonly name: string; readonly questions: readonly WorkedQuestion[] }) {
  const { name, questions } = props
  return (
    <details>
      <summary>
        {name}: {counted(questions.length, 'question')}
      </summary>
      <ol className="drawn" aria-label={name}>
        {questions.map(({ text, type, answer }) => (
          <li key={text}>
            <span className="sum">{text}</span>{' '}
            <span className="quiet">
              {type}; {answer}
            </span>
          </li>
        ))}
      </ol>
    </details>
  )
}

function CriteriaCard({ maker, state, lesson }: Parts & { readonly lesson: Lesson }) {
  const { criteria } = state.choices
  return (
    <Card title="Success criteria">
      <Field
        label="One in a line"
        hint="They stand on the example and on the practice, each with a box to tick."
      >
        <Textarea
          rows={6}
          resize="vertical"
          value={criteria ?? lesson.criteria.join('\n')}
          onChange={(_, { value }) => {
            maker.choose({ criteria: value })
          }}
        />
      </Field>
      {criteria !== null && (
        <Button
          size="small"
          onClick={() => {
            maker.choose({ criteria: null })
          }}
        >
          Back to ours
        </Button>
      )}
    </Card>
  )
}

function MakeCard({ maker, state }: Parts) {
  const { choices, pupils, made } = state
  const busy = useBusy() || 'problem' in made
  return (
    <Card title="Into the workbook">
      <ChoiceField
        label="On the marksheet"
        value={choices.onMarksheet}
        options={ON_MARKSHEET}
        onChoose={(onMarksheet) => {
          maker.choose({ onMarksheet })
        }}
      />
      {choices.onMarksheet !== 'none' && (
        <div className="names">
          <p>
            {pupils ? namesFound(pupils) : 'No names found on this sheet yet: no marksheet without them.'}
          </p>
          <Button size="small" icon={SELECT} onClick={() => void maker.takeNames()}>
            Use my selection
          </Button>
        </div>
      )}
      <Button appearance="primary" icon={CELLS} disabled={busy} onClick={() => void maker.write()}>
        Make the lesson
      </Button>
      <p className="quiet where">
        Sheets to print, the answers with their working, a letter home and the marksheet, each on a sheet of
        its own. One Undo takes all of it back.
      </p>
    </Card>
  )
}
