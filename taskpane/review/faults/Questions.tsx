import { Button } from '@fluentui/react-components'
import { useState, type ReactElement } from 'react'
import { questionViews, type QuestionView } from '../../../src/marksheet/reports/classView'
import { addressOf, type Area, type CellRef } from '../../../src/marksheet/layout/matrix'
import type { Review } from '../../../src/marksheet/marking/review'
import { Card } from '../../common/Card'
import { counted } from '../../common/words'
import { Choice } from '../pupils/Choice'
import { faultOf } from './faults'

const ORDERS = [
  ['missed', 'most missed'],
  ['sheet', 'the sheet'],
] as const

/** A cell as an area, to go to. */
export const cellArea = ({ row, column }: CellRef): Area => ({
  top: row,
  left: column,
  bottom: row,
  right: column,
})

interface Showing {
  readonly onShow: (area: Area) => void
}

/** The class by question: how many were right, what was answered most, and who missed it. */
export function Questions({
  reviews,
  onShow,
}: { readonly reviews: readonly Review[] } & Showing): ReactElement {
  const [order, setOrder] = useState<'missed' | 'sheet'>('missed')
  const views = questionViews(reviews)
  const sorted = order === 'missed' ? views.toSorted((one, other) => shareOf(one) - shareOf(other)) : views
  return (
    <Card title="The class by question">
      <Choice label="In order of" value={order} options={ORDERS} onChoose={setOrder} />
      <ol className="questions">
        {sorted.map((view) => (
          <li key={view.text}>
            <QuestionLine view={view} onShow={onShow} />
          </li>
        ))}
      </ol>
    </Card>
  )
}

const shareOf = ({ right, tried }: QuestionView) => (tried === 0 ? 2 : right / tried)

function QuestionLine({ view, onShow }: { readonly view: QuestionView } & Showing) {
  const { text, answer, type, right, tried, missed, counts, commonest } = view
  const gaps = [
    counts.blank > 0 ? `${counts.blank} blank` : '',
    counts.absent > 0 ? `${counts.absent} absent` : '',
    counts.unreadable > 0 ? `${counts.unreadable} to look at` : '',
  ].filter((part) => part !== '')
  const [first] = commonest
  const others = commonest
    .slice(1)
    .flatMap(({ answer: other, count }) => (count === first?.count ? other : []))
  const fault = faultOf(first?.fault ?? null)
  return (
    <>
      <p className="question">
        <Button
          appearance="transparent"
          size="small"
          className="sum"
          aria-label={`${text}: show the question in the sheet`}
          onClick={() => {
            onShow(cellArea(view.cell))
          }}
        >
          {text}
        </Button>
        <span className="sum quiet">= {answer}</span>
        <strong>
          {right} of {tried} right
        </strong>
      </p>
      {tried > 0 && (
        <div className="bar" aria-hidden="true">
          <span style={{ inlineSize: `${(100 * right) / tried}%` }} />
        </div>
      )}
      <p className="quiet">{[type, ...gaps].join(', ')}</p>
      {first && first.count > 1 && (
        <p>
          Most often wrong: <strong className="sum">{first.answer}</strong>
          {others.length > 0 && `, as often as ${others.join(', ')}`}, {counted(first.count, 'pupil')}
          {others.length > 0 && ' each'}.{' '}
          {fault && (
            <>
              Perhaps{others.length > 0 && `, for ${first.answer}`}: {fault.sentence}
            </>
          )}
        </p>
      )}
      {missed.length > 0 && (
        <details>
          <summary>Missed by {counted(missed.length, 'pupil')}</summary>
          <ul className="names">
            {missed.map(({ pupil, cell, typed }) => (
              <li key={addressOf(cell)}>
                <Button
                  appearance="outline"
                  size="small"
                  onClick={() => {
                    onShow(cellArea(cell))
                  }}
                >
                  {pupil}: {typed}
                </Button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  )
}
