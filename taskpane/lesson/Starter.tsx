import { useMemo, useState, type ReactElement } from 'react'
import { printQuestion } from '../../src/arithmetic/question'
import {
  BOARDS,
  diceGrid,
  gridSizes,
  minutesFor,
  worthOf,
  type Board,
  type DiceGrid,
} from '../../src/lesson/dice'
import { diceHandout } from '../../src/lesson/starterSheets'
import { Card } from '../common/Card'
import { ChoiceField } from '../common/ChoiceField'
import { counted } from '../common/words'
import { SetNumber } from '../set/SetNumber'
import { CountField } from './CountField'
import { Take } from './Take'
import { useSetNumber } from './useSetNumber'

const SIZES = gridSizes()
type Size = (typeof SIZES)[number]
const nameOf = ({ rows, columns }: Pick<Size, 'rows' | 'columns'>) => `${rows} × ${columns}`
const lengthOf = ({ rolls, ...size }: Size) =>
  `about ${counted(minutesFor(rolls), 'minute')}, ${Math.round(rolls)} rolls: ${nameOf(size)} cells`
const FIRST_SIZE = '4 × 5'
const MOST_BOARDS = 15

/** What the boards are called in the list. */
const BOARD_NAMES: Readonly<Record<Board, string>> = {
  'take away': 'Subtract a one-digit number',
  add: 'Add one-digit numbers',
  tens: 'Subtract in tens',
  hundreds: 'Subtract in hundreds',
  bonds: 'Bonds to 20',
}

/** The dice starter: boards of questions to cover, as long as the teacher has time for. */
export function Starter(): ReactElement {
  const draw = useSetNumber()
  const [size, setSize] = useState(FIRST_SIZE)
  const [board, setBoard] = useState<Board>('take away')
  const [count, setCount] = useState(1)
  const { rows = 0, columns = 0 } = SIZES.find((each) => nameOf(each) === size) ?? {}
  const grids = useMemo(
    () => boardsOf(rows, columns, draw.set, board, count),
    [rows, columns, draw.set, board, count],
  )
  const handout = useMemo(() => (grids.length > 0 ? diceHandout(grids, draw.set) : null), [grids, draw.set])
  const [grid] = grids
  return (
    <>
      <Card title="The boards">
        <div className="recipe">
          <ChoiceField
            label="What to practise"
            value={board}
            options={BOARDS.map((each) => [each, BOARD_NAMES[each]])}
            onChoose={setBoard}
          />
          <ChoiceField
            label="Length of the game"
            hint="On average, until every cell is covered; a quarter of a minute for each roll."
            value={size}
            options={SIZES.map((each) => [nameOf(each), lengthOf(each)])}
            onChoose={setSize}
          />
          <CountField
            label="Different boards"
            least={1}
            most={MOST_BOARDS}
            value={count}
            onChoose={setCount}
          />
        </div>
        <SetNumber {...draw.field} />
        {grid && <Answers grid={grid} />}
        <p className="quiet">
          Pupils roll two dice and cover a cell by their total. The totals that come up most often stand in
          most cells. {count > 1 ? 'The first board is shown; ' : ''}“on” and “back” say which way of counting
          suits. They and the answers are on the teacher’s sheet only.
        </p>
      </Card>
      <Take handout={handout} />
    </>
  )
}

/** Different boards from one set number, the first as it would be alone; none where there is no such number of them. */
function boardsOf(rows: number, columns: number, set: string, board: Board, count: number): DiceGrid[] {
  const many = Number.isInteger(count) && count >= 1 && count <= MOST_BOARDS ? count : 0
  return Array.from({ length: many }, (_, index) =>
    diceGrid(rows, columns, index === 0 ? set : `${set} board ${index + 1}`, board),
  ).flatMap((reading) => ('grid' in reading ? [reading.grid] : []))
}

function Answers({ grid: { board, rows } }: { readonly grid: DiceGrid }) {
  return (
    <div className="scroller" tabIndex={0} role="group" aria-label="The grid, with answers">
      <table className="dice">
        <tbody>
          {rows.map((row, index) => (
            <tr key={index}>
              {row.map(({ question, total, counting }, column) => (
                <td key={column}>
                  <span className="sum">{printQuestion(question)}</span>
                  {question.missing === 'result' ? ' = ' : ': '}
                  {total * worthOf(board)}{' '}
                  <span className="quiet">{(counting ?? '').replace('count ', '')}</span>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
