import { Field, Select } from '@fluentui/react-components'
import { useMemo, useState, type ReactElement } from 'react'
import { printQuestion } from '../../src/arithmetic/question'
import { diceGrid, gridSizes } from '../../src/lesson/dice'
import { diceHandout } from '../../src/lesson/starterSheets'
import { Card } from '../common/Card'
import { SetNumber } from '../set/SetNumber'
import { Take } from './Take'
import { useSetNumber } from './useSetNumber'

const SIZES = gridSizes()
type Size = (typeof SIZES)[number]
const nameOf = ({ rows, columns }: Pick<Size, 'rows' | 'columns'>) => `${rows} × ${columns}`
const FIRST_SIZE = '4 × 5'

/** The dice starter: a grid of subtractions to cover, as long as the teacher has time for. */
export function Starter(): ReactElement {
  const draw = useSetNumber()
  const [size, setSize] = useState(FIRST_SIZE)
  const { rows = 0, columns = 0 } = SIZES.find((each) => nameOf(each) === size) ?? {}
  const reading = useMemo(() => diceGrid(rows, columns, draw.set), [rows, columns, draw.set])
  const grid = 'grid' in reading ? reading.grid : null
  const handout = useMemo(() => grid && diceHandout(grid, draw.set), [grid, draw.set])
  return (
    <>
      <Card title="The grid">
        <div className="recipe">
          <Field label="Length of the game" hint="On average, until every cell is covered.">
            <Select
              value={size}
              onChange={(_, { value }) => {
                setSize(value)
              }}
            >
              {SIZES.map((each) => (
                <option key={nameOf(each)} value={nameOf(each)}>
                  about {Math.round(each.rolls)} rolls: {nameOf(each)} cells
                </option>
              ))}
            </Select>
          </Field>
        </div>
        <SetNumber {...draw.field} />
        {'problem' in reading && <p role="alert">{reading.problem}</p>}
        {grid && (
          <div className="scroller" tabIndex={0} role="group" aria-label="The grid, with answers">
            <table className="dice">
              <tbody>
                {grid.rows.map((row, index) => (
                  <tr key={index}>
                    {row.map(({ question, total, counting }, column) => (
                      <td key={column}>
                        <span className="sum">{printQuestion(question)}</span> = {total}{' '}
                        <span className="quiet">{counting.replace('count ', '')}</span>
                      </td>
                    ))}
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        )}
        <p className="quiet">
          Pupils roll two dice and cover a subtraction whose answer is the total. The totals that come up most
          often stand in most cells. “On” and “back” say which way of counting suits; they and the answers are
          on the teacher’s sheet only.
        </p>
      </Card>
      <Take handout={handout} />
    </>
  )
}
