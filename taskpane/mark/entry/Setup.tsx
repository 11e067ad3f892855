import { Button, Checkbox, Field, Radio, RadioGroup } from '@fluentui/react-components'
import { useState, type ReactElement } from 'react'
import { isEmpty } from '../../../src/marksheet/layout/matrix'
import { Card } from '../../common/Card'
import { ChoiceField } from '../../common/ChoiceField'
import { PEN } from '../../common/icons'
import { counted } from '../../common/words'
import type { Seen } from '../actions'
import { linesOf, walkFrom, type Line, type Order, type Place } from './places'

/** Chooses which answers are entered, and in which order. */
export function Setup(props: {
  readonly seen: Seen
  readonly onStart: (places: readonly Place[]) => void
  readonly onClose: () => void
}): ReactElement {
  const { seen, onStart, onClose } = props
  const [order, setOrder] = useState<Order>('question')
  const [filledToo, setFilledToo] = useState(false)
  const lines = linesOf(seen.reading.matrix, seen.marksheets, order)
  const [chosen, setChosen] = useState<number | null>(null)
  const first =
    chosen ??
    Math.max(
      0,
      lines.findIndex((line) => emptyIn(line) > 0),
    )
  const places = walkFrom(lines, first, filledToo)
  return (
    <Card title="Quick entry">
      <p>For books marked on paper: press Enter for a right answer, and type only the wrong ones.</p>
      <Field label="Walk">
        <RadioGroup
          value={order}
          onChange={(_, { value }) => {
            setOrder(value === 'pupil' ? 'pupil' : 'question')
            setChosen(null)
          }}
        >
          <Radio value="question" label="down one question after another" />
          <Radio value="pupil" label="along one pupil after another" />
        </RadioGroup>
      </Field>
      <ChoiceField
        label="Start with"
        value={first}
        options={lines.map((line, index) => [
          index,
          `${line.title} (${counted(emptyIn(line), 'answer')} to enter)`,
        ])}
        onChoose={setChosen}
      />
      <Checkbox
        label="Go over answers that are there already, too"
        checked={filledToo}
        onChange={(_, { checked }) => {
          setFilledToo(checked === true)
        }}
      />
      {places.length === 0 && (
        <p>From here on every answer has been entered. Start with another one, or tick the box above.</p>
      )}
      <div className="buttons">
        <Button
          appearance="primary"
          icon={PEN}
          disabled={places.length === 0}
          onClick={() => {
            onStart(places)
          }}
        >
          Start, {counted(places.length, 'answer')}
        </Button>
        <Button onClick={onClose}>Back</Button>
      </div>
    </Card>
  )
}

function emptyIn({ places }: Line): number {
  return places.filter(({ held }) => isEmpty(held)).length
}
