import { Button } from '@fluentui/react-components'
import { Fragment, useMemo, useState, type ReactElement } from 'react'
import { printQuestion } from '../../src/arithmetic/question'
import { PERSONAL_QUESTIONS, type PersonalSet } from '../../src/lesson/personal'
import { personalHandout } from '../../src/lesson/questionSheets'
import { Card } from '../common/Card'
import { ChoiceField } from '../common/ChoiceField'
import { CELLS } from '../common/icons'
import { FRONT } from '../common/front'
import { useNotation } from '../common/notation'
import { useBusy, useRunner, useRunnerState, useStore } from '../common/pane'
import { useFront } from '../common/watching'
import { counted } from '../common/words'
import { ownForEach } from '../home/atHome'
import { HomeCard } from '../home/HomeCard'
import { setNumber } from '../set/choices'
import { SetNumber } from '../set/SetNumber'
import { CountField } from './CountField'
import { PersonalMaker, YEARS } from './PersonalMaker'
import { Take } from './Take'

/** Personal sets: each pupil's own questions by need, onto a sheet to type answers on, or on paper. */
export function Personal(): ReactElement {
  const runner = useRunner()
  const [maker] = useState(() => new PersonalMaker(runner, FRONT))
  const { year, count, typed, needs, from, made } = useStore(maker)
  const { writes } = useRunnerState()
  const notation = useNotation()
  const busy = useBusy() || 'problem' in made
  useFront(maker.look, writes)
  const handout = useMemo(
    () => ('sets' in made ? personalHandout(made.sets, { notation, set: setNumber(typed) }) : null),
    [made, notation, typed],
  )
  return (
    <>
      <Card title="For whom">
        <div className="recipe">
          {needs.length > 0 && (
            <ChoiceField
              label="By the needs of"
              value={from}
              options={needs.map(({ name }, index) => [index, name])}
              onChoose={(chosen) => {
                maker.choose({ from: chosen })
              }}
            />
          )}
          <div className="halves">
            <ChoiceField
              label="Year"
              value={year}
              options={YEARS.map((each) => [each, `Year ${each}`])}
              onChoose={(chosen) => {
                maker.choose({ year: chosen })
              }}
            />
            <CountField
              label="Questions each"
              least={PERSONAL_QUESTIONS.least}
              most={PERSONAL_QUESTIONS.most}
              value={count}
              onChoose={(chosen) => {
                maker.choose({ count: chosen })
              }}
            />
          </div>
        </div>
        <SetNumber
          typed={typed}
          onType={(now) => {
            maker.choose({ typed: now })
          }}
          onAgain={maker.again}
        />
        {'problem' in made ? (
          <p className="no-set" role="alert">
            <strong>! No sets.</strong> {made.problem}
          </p>
        ) : (
          <Preview sets={made.sets} />
        )}
        <p className="quiet">
          What needs most work comes first, from easy to hard, with one question of what is well known. It
          goes by the answers so far: change any question as you see fit.
        </p>
      </Card>
      <Card title="To type answers on">
        <Button appearance="primary" icon={CELLS} disabled={busy} onClick={() => void maker.write()}>
          Lay out the personal sets
        </Button>
        <p className="quiet where">
          One row for each pupil on a sheet of its own, each question with room for its answer; Mark reads it
          as it is.
        </p>
      </Card>
      {'sets' in made && <HomeCard atHome={ownForEach(made.sets)} />}
      <Take handout={handout} />
    </>
  )
}

function Preview({ sets }: { readonly sets: readonly PersonalSet[] }) {
  return (
    <details>
      <summary>
        {counted(sets.length, 'pupil')}:{' '}
        {counted(
          sets.reduce((sum, set) => sum + set.questions.length, 0),
          'question',
        )}
      </summary>
      <ul className="personal" aria-label="Personal sets">
        {sets.map(({ name, types, questions }, index) => (
          <li key={index}>
            <strong>{name}</strong> <span className="quiet">{types.map(typeInWords).join('; ')}</span>
            <br />
            {questions.map((question, place) => (
              <Fragment key={place}>
                {place > 0 && ', '}
                <span className="sum">{printQuestion(question)}</span>
              </Fragment>
            ))}
          </li>
        ))}
      </ul>
    </details>
  )
}

const typeInWords = (type: PersonalSet['types'][number]) => (type === 'any' ? 'mixed' : type)
