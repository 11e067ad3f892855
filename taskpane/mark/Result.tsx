import { Button } from '@fluentui/react-components'
import { useState, type ReactElement } from 'react'
import { addressOf, type Area, type CellRef } from '../../src/marksheet/layout/matrix'
import { Card } from '../common/Card'
import { OutcomeCount } from '../common/OutcomeCount'
import { counted } from '../common/words'
import type { Summary, Support, ToLookAt } from './summary'

interface Showing {
  readonly onShow: (area: Area) => void
}

const OUTCOMES = ['correct', 'incorrect', 'unreadable', 'blank', 'absent'] as const
const MOST_SHOWN = 6

const only = ({ row, column }: CellRef): Area => ({ top: row, left: column, bottom: row, right: column })

/** What marking found, in a few lines; a click on an answer or a name goes to its cell. Names are left out while flags are hidden. */
export function Result({
  summary,
  namesShown,
  onShow,
}: {
  readonly summary: Summary
  readonly namesShown: boolean
} & Showing): ReactElement {
  const { counts } = summary
  const total = OUTCOMES.reduce((sum, outcome) => sum + counts[outcome], 0)
  return (
    <Card title="Result">
      <p className="quiet">Of {counted(total, 'answer')}:</p>
      <ul className="outcomes">
        {OUTCOMES.map((outcome) => (
          <OutcomeCount key={outcome} outcome={outcome} count={counts[outcome]} />
        ))}
      </ul>
      {namesShown ? (
        <ByName summary={summary} onShow={onShow} />
      ) : (
        <p className="quiet">Names are hidden here as long as the flags are.</p>
      )}
    </Card>
  )
}

function ByName({ summary: { toLookAt, support }, onShow }: { readonly summary: Summary } & Showing) {
  return (
    <>
      {toLookAt.length > 0 && <LookAt answers={toLookAt} onShow={onShow} />}
      <h3>Needs support</h3>
      {support.length === 0 && <p>Nobody is flagged, as far as these answers show.</p>}
      {support.map((each) => (
        <SupportLine key={each.title} support={each} onShow={onShow} />
      ))}
      {support.length > 0 && (
        <p className="quiet">
          A flag is a prompt for your own judgement: look at the working before you act on it. Review says
          what helps.
        </p>
      )}
    </>
  )
}

function LookAt({ answers, onShow }: { readonly answers: readonly ToLookAt[] } & Showing) {
  const [all, setAll] = useState(false)
  const shown = all ? answers : answers.slice(0, MOST_SHOWN)
  return (
    <>
      <h3>{counted(answers.length, 'answer')} to look at, not counted wrong</h3>
      <ul className="to-look-at">
        {shown.map(({ cell, pupil, question, typed }) => (
          <li key={addressOf(cell)}>
            <Button
              appearance="subtle"
              size="small"
              onClick={() => {
                onShow(only(cell))
              }}
            >
              <span>
                <strong>{addressOf(cell)}</strong> {pupil}: {question} → “{typed}”
              </span>
            </Button>
          </li>
        ))}
      </ul>
      {answers.length > MOST_SHOWN && (
        <Button
          size="small"
          aria-expanded={all}
          onClick={() => {
            setAll(!all)
          }}
        >
          {all ? 'Show fewer' : `Show all ${answers.length}`}
        </Button>
      )}
    </>
  )
}

function SupportLine({ support: { title, why, pupils }, onShow }: { readonly support: Support } & Showing) {
  return (
    <div className="support">
      <p>
        <strong>{title}</strong> <span className="quiet">{counted(pupils.length, 'pupil')}</span>
      </p>
      <p className="quiet">{why}</p>
      <ul>
        {pupils.map(({ name, cell, evidence }) => (
          <li key={addressOf(cell)}>
            <Button
              appearance="subtle"
              size="small"
              onClick={() => {
                onShow(only(cell))
              }}
            >
              <span>
                <strong>{name}</strong> {evidence}
              </span>
            </Button>
          </li>
        ))}
      </ul>
    </div>
  )
}
