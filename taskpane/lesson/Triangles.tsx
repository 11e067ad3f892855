import { useMemo, useState, type ReactElement } from 'react'
import { triangleDrawing, triangleInWords } from '../../src/lesson/drawings'
import { triangleHandout } from '../../src/lesson/starterSheets'
import {
  trianglePuzzles,
  TRIANGLES_ON_A_PAGE,
  type TriangleGrade,
  type TrianglePuzzle,
} from '../../src/lesson/triangle'
import { Card } from '../common/Card'
import { ChoiceField } from '../common/ChoiceField'
import { SetNumber } from '../set/SetNumber'
import { CountField } from './CountField'
import { LessonDrawing } from './LessonDrawing'
import { Take } from './Take'
import { useSetNumber } from './useSetNumber'

const GRADES: readonly (readonly [TriangleGrade, string])[] = [
  [1, '1: two corners given'],
  [2, '2: one corner given'],
  [3, '3: no corner given'],
]

/** Number triangles: puzzles with one solution each, their hints and solutions folded away. */
export function Triangles(): ReactElement {
  const draw = useSetNumber()
  const [grade, setGrade] = useState<TriangleGrade>(1)
  const [count, setCount] = useState(2)
  const puzzles = useMemo(() => trianglePuzzles(grade, count, draw.set), [grade, count, draw.set])
  const handout = useMemo(() => triangleHandout(puzzles, draw.set), [puzzles, draw.set])
  return (
    <>
      <Card title="The triangles">
        <div className="recipe">
          <div className="pair">
            <ChoiceField label="Grade" value={grade} options={GRADES} onChoose={setGrade} />
            <CountField
              label="How many"
              least={1}
              most={TRIANGLES_ON_A_PAGE}
              value={count}
              onChoose={setCount}
            />
          </div>
        </div>
        <SetNumber {...draw.field} />
        <p className="quiet">
          The numbers 1 to 9, each once; every side adds up to the number in the middle. Each triangle has
          exactly one solution.
        </p>
        {puzzles.map((puzzle, index) => (
          <Puzzle key={`${draw.set} ${grade} ${index}`} puzzle={puzzle} name={`Triangle ${index + 1}`} />
        ))}
      </Card>
      <Take handout={handout} />
    </>
  )
}

function Puzzle({ puzzle, name }: { readonly puzzle: TrianglePuzzle; readonly name: string }) {
  const { total, given, solution, hint } = puzzle
  return (
    <section className="piece">
      <h3>{name}</h3>
      <LessonDrawing drawing={triangleDrawing(total, given)} words={triangleInWords(total, given)} />
      <details>
        <summary>Hint for {name}</summary>
        {hint.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </details>
      <details>
        <summary>Solution of {name}</summary>
        <LessonDrawing drawing={triangleDrawing(total, solution)} words={triangleInWords(total, solution)} />
      </details>
    </section>
  )
}
