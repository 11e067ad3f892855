import { Button } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import { areaOf, type Area } from '../../src/marksheet/layout/matrix'
import type { DiagnosedPupil } from '../../src/marksheet/reports/needs'
import './Reason.css'

/** A pupil's diagnosis in a line; a click goes to the answers that it explains, or else to all wrong ones. */
export function Reason({
  pupil: found,
  onShow,
}: {
  readonly pupil: DiagnosedPupil
  readonly onShow: (area: Area) => void
}): ReactElement {
  const { name, pupil, diagnosis } = found
  const explained = diagnosis.named.flatMap(({ explains, explainsButForSlip }) => [
    ...explains,
    ...explainsButForSlip,
  ])
  const wrong = pupil.outcomes.flatMap((outcome, index) => (outcome === 'incorrect' ? [index] : []))
  const cells = (explained.length > 0 ? explained : wrong).flatMap((index) => pupil.answers[index] ?? [])
  return (
    <Button
      appearance="subtle"
      size="small"
      className="reason"
      disabled={cells.length === 0}
      onClick={() => {
        onShow(areaOf([cells]))
      }}
    >
      <span>
        <strong>{name}</strong> {diagnosis.sentence}
      </span>
    </Button>
  )
}
