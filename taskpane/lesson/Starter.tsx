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
const nameOf = ({ rows, columns }: { readonly rows: number; readonly columns: number }) =>
  `${rows} × ${columns}`
const FIRST_SIZE = '4 × 5'

/** The dice starter: a grid of subtractions to cover, as long as the teacher has time for. */
export function Starter(): ReactElement {
  const draw = useSetNumber()
  const [size, setSize] = useState(FIRST_SIZE)
  const { rows = 0, columns = 0 } = SIZES.find((each) => nameOf(each) === size) ?? {}
  const reading = useMemo(() => diceGrid(rows, columns, draw.set), [rows, columns, draw.set])
  const grid = 'grid' in reading ? reading.grid : null
  const handout = useMemo(() => grid && diceHandout(grid), [grid])
  return (
    <>
      <Card title="The grid">
        <div className="recipe">
          <Field label="Size">
            <Select
              value={size}
              onChange={(_, { value }) => {
                setSize(value)
              }}
            >
              {SIZES.map((each) => (
                <option key={nameOf(each)} value={nameOf(each)}>
                  {nameOf(each)}: about {Math.round(each.rolls)} rolls to cover all
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
                        <span className="sum">{printQuestion(question)}</span> = {total}
                        <span className="quiet"> {counting}</span>
                      </td>
                    ))}
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        )}
        <p className="quiet">
          Pupils roll two dice and cover a subtraction whose answer is the total. Answers and ways to count
          are on the teacher’s sheet only.
        </p>
      </Card>
      <Take handout={handout} />
    </>
  )
}
