import { Button, Checkbox } from '@fluentui/react-components'
import { useState, type ReactElement } from 'react'
import { heatMap, type Order } from '../../../src/marksheet/reports/classView'
import type { Family } from '../../../src/arithmetic/families'
import { STATUSES, type Status, type FamilyStanding } from '../../../src/mastery/standing'
import { countsFor } from '../../../src/mastery/explain'
import { statusSign } from '../../../src/mastery/support'
import { Card } from '../../common/Card'
import { useSettings } from '../../common/settings'
import { Choice } from './Choice'
import type { Person } from './people'

const ORDERS = [
  ['need', 'need'],
  ['name', 'name'],
] as const satisfies readonly (readonly [Order, string])[]

/** The style of a status. */
export const statusClass = (status: Status) => `status-${status.replaceAll(' ', '-')}`

/** A family that may be broken inside its longest word, so that all columns stand side by side in the pane. */
const breakable = (family: Family) => family.replace('exchange', 'ex\u00adchange')

/** Pupils by family of exchange types: a sign, the evidence and a word in every cell. A click on a name opens the pupil. */
export function HeatMap(props: {
  readonly people: readonly Person[]
  readonly onOpen: (person: Person) => void
}): ReactElement {
  const { people, onOpen } = props
  const [order, setOrder] = useState<Order>('need')
  const [likely, setLikely] = useState(false)
  const { families, rows } = heatMap(people, order)
  return (
    <Card title="Pupils by family">
      <div className="choices">
        <Choice label="In order of" value={order} options={ORDERS} onChoose={setOrder} />
        <Checkbox
          label="Show how likely it is secure"
          checked={likely}
          onChange={(_, { checked }) => {
            setLikely(checked === true)
          }}
        />
      </div>
      <div className="heat-box" role="region" aria-label="Table of pupils" tabIndex={0}>
        <table className="heat">
          <thead>
            <tr>
              <th scope="col">Pupil</th>
              {families.map((family) => (
                <th key={family} scope="col">
                  {breakable(family)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ pupil, standings }) => (
              <tr key={pupil.key}>
                <th scope="row">
                  <Button
                    appearance="transparent"
                    size="small"
                    onClick={() => {
                      onOpen(pupil)
                    }}
                  >
                    {pupil.name}
                  </Button>
                </th>
                {standings.map((standing, index) => (
                  <Cell key={families[index]} standing={standing} likely={likely} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <Legend />
    </Card>
  )
}

function Cell(props: { readonly standing: FamilyStanding | null; readonly likely: boolean }) {
  const { standing, likely } = props
  const { words } = useSettings()
  if (standing === null || standing.tried === 0)
    return (
      <td className="never">
        <span aria-hidden="true">·</span>
        <span className="unseen">not tried</span>
      </td>
    )
  const { right, tried, status, probability } = standing
  return (
    <td className={statusClass(status)}>
      <strong>
        <span aria-hidden="true">{statusSign(status)} </span>
        {right} of {tried}
      </strong>
      <span className="word">{words[status]}</span>
      {likely && (
        <span className="word">
          {Math.round(100 * probability)}% {words.secure}
        </span>
      )}
    </td>
  )
}

/** What the signs mean, with the counts that make each word, and how the whole is to be taken. */
function Legend() {
  const { mastery, words } = useSettings()
  return (
    <>
      <ul className="legend">
        {STATUSES.toReversed().map((status) => (
          <li key={status}>
            <strong className={statusClass(status)}>
              <span aria-hidden="true">{statusSign(status)} </span>
              {words[status]}
            </strong>{' '}
            {countsFor(status, mastery)}
          </li>
        ))}
      </ul>
      <p className="quiet">
        Over the weeks of Record the latest answers weigh most. “{words['needs support']}” is a prompt for
        your own judgement, never a verdict on a child. Open a pupil for the types, each with its reason.
      </p>
    </>
  )
}
