import { Button, Field, Radio, RadioGroup } from '@fluentui/react-components'
import { useState, type ReactElement } from 'react'
import type { InPlaceOfNames } from '../../../src/marksheet/reports/share'
import { Card } from '../../common/Card'
import { useBusy } from '../../common/pane'

const CHOICES: readonly (readonly [how: InPlaceOfNames, words: string])[] = [
  ['codes', 'codes, such as Pupil 07'],
  ['initials', 'initials, such as AP; numbered where two are alike'],
]

const CAUTIONS: Readonly<Record<InPlaceOfNames, string>> = {
  codes:
    'The codes are drawn anew each time, and which is whose is written down nowhere. Whoever has this workbook, or knows the children’s work, can still tell by the answers.',
  initials:
    'Whoever knows the class can tell most children by their initials. Choose codes for anybody outside it.',
}

/** A sheet to be shared: the marksheet that is shown, with initials or codes in place of the names. */
export function ShareCard(props: {
  readonly sheetName: string
  readonly onShare: (how: InPlaceOfNames) => void
}): ReactElement {
  const { sheetName, onShare } = props
  const [how, setHow] = useState<InPlaceOfNames>('codes')
  const busy = useBusy()
  return (
    <Card title="A sheet to share">
      <p>
        A new sheet with the questions and answers of {sheetName}, told right from wrong, and no names. The
        marksheet itself stays as it is.
      </p>
      <Field label="In place of names">
        <RadioGroup
          value={how}
          onChange={(_, { value }) => {
            setHow(CHOICES.find(([each]) => each === value)?.[0] ?? 'codes')
          }}
        >
          {CHOICES.map(([each, words]) => (
            <Radio key={each} value={each} label={words} />
          ))}
        </RadioGroup>
      </Field>
      <p>{CAUTIONS[how]}</p>
      <p>
        Answers stay as they were typed: look through them for a name. This workbook still holds the names, so
        move the sheet into a workbook of its own before you share it.
      </p>
      <Button
        disabled={busy}
        onClick={() => {
          onShare(how)
        }}
      >
        Make the sheet to share
      </Button>
    </Card>
  )
}
