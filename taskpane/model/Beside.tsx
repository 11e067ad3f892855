import { Switch } from '@fluentui/react-components'
import { useState, type ReactElement } from 'react'
import { ChoiceField } from '../common/ChoiceField'
import { printQuestion, type Question } from '../../src/arithmetic/question'
import { countersAfter, countersInWords, drawCounters, hasCounters } from '../../src/lesson/model/counters'
import {
  drawNumberLine,
  lineInWords,
  numberLine,
  saidOfLine,
  type LineWay,
  type NumberLine,
} from '../../src/lesson/model/numberLine'
import { BACK, NEXT } from '../common/icons'
import { DrawingOnScreen } from './PaperDrawing'
import { steppingByKeys } from './playing'
import { StepButton } from './StepButton'

/** What can be shown beside the steps, on asking: place-value counters that follow them, and a number line with jumps of its own. */
export function Beside({
  question,
  step,
}: {
  readonly question: Question
  readonly step: number
}): ReactElement | null {
  const [shows, setShows] = useState({ counters: false, line: false })
  const ways = (['count on', 'count back'] as const).filter((way) => numberLine(question, way) !== null)
  const canCount = hasCounters(question)
  if (!canCount && ways.length === 0) return null
  const counters = countersAfter(question, step)
  return (
    <div className="beside">
      <div className="besides">
        {canCount && (
          <Switch
            label="Counters"
            checked={shows.counters}
            onChange={(_, { checked }) => {
              setShows({ ...shows, counters: checked })
            }}
          />
        )}
        {ways.length > 0 && (
          <Switch
            label="Number line"
            checked={shows.line}
            onChange={(_, { checked }) => {
              setShows({ ...shows, line: checked })
            }}
          />
        )}
      </div>
      {canCount && shows.counters && (
        <DrawingOnScreen
          className="paper counters"
          drawing={drawCounters(question, counters)}
          words={countersInWords(question, counters)}
        />
      )}
      {shows.line && <Line key={printQuestion(question)} question={question} ways={ways} />}
    </div>
  )
}

function Line({ question, ways }: { readonly question: Question; readonly ways: readonly LineWay[] }) {
  const [chosen, setChosen] = useState<LineWay>('count on')
  const [jumps, setJumps] = useState(0)
  const way = ways.includes(chosen) ? chosen : ways[0]
  const line = way && numberLine(question, way)
  if (!line) return null
  return (
    <>
      {ways.length > 1 && (
        <ChoiceField
          label="On the line"
          value={way}
          options={[
            ['count on', 'Count on'],
            ['count back', 'Count back'],
          ]}
          onChoose={(chosen) => {
            setChosen(chosen)
            setJumps(0)
          }}
        />
      )}
      <Jumps line={line} done={jumps} onJump={setJumps} />
    </>
  )
}

function Jumps(props: {
  readonly line: NumberLine
  readonly done: number
  readonly onJump: (jumps: number) => void
}) {
  const { line, done, onJump } = props
  const count = line.jumps.length
  const stepping = { step: done, count, onStep: onJump }
  return (
    <div role="group" aria-label="Number line" onKeyDown={steppingByKeys(done, count, onJump)}>
      <DrawingOnScreen
        className="paper number-line"
        drawing={drawNumberLine(line, done)}
        words={lineInWords(line, done)}
      />
      <p className="jumped" role="status">
        {saidOfLine(line, done)}
      </p>
      <div className="steps">
        <StepButton label="Jump back" icon={BACK} keyName="ArrowLeft" {...stepping} />
        <StepButton label="Next jump" icon={NEXT} keyName="ArrowRight" {...stepping} />
      </div>
    </div>
  )
}
