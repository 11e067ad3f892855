import { Button, Checkbox } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import { areaAddress } from '../../src/marksheet/layout/matrix'
import { Card } from '../common/Card'
import { CELLS, SELECT } from '../common/icons'
import { useBusy } from '../common/pane'
import { counted } from '../common/words'
import { WriteOver } from '../common/WriteOver'
import type { Pupils, Setter, SetterState } from './setter'

/** Takes the set to the workbook: as a whole marksheet for a list of names, or the questions alone. */
export function WriteCard(props: { readonly setter: Setter; readonly state: SetterState }): ReactElement {
  const { setter, state } = props
  const { pupils, withKey, asked, made } = state
  const busy = useBusy() || 'problem' in made
  return (
    <Card title="Into the workbook">
      <div className="names">
        <p>{pupils ? namesFound(pupils) : 'No names found on this sheet yet.'}</p>
        <Button size="small" icon={SELECT} onClick={() => void setter.takeNames()}>
          Use my selection
        </Button>
      </div>
      <Button appearance="primary" icon={CELLS} disabled={busy} onClick={() => void setter.layOut()}>
        Lay out a marksheet
      </Button>
      <p className="quiet where">On this sheet where it is empty, otherwise on a new one.</p>
      <h3>Only the questions, from the selected cell</h3>
      <div className="buttons">
        <Button disabled={busy} onClick={() => void setter.write('across')}>
          Write across
        </Button>
        <Button disabled={busy} onClick={() => void setter.write('down')}>
          Write down
        </Button>
      </div>
      {asked && <WriteOver {...asked.target} onAnswer={(over) => void setter.answer(over)} />}
      <Checkbox
        label="Answers on the sheet Answer key"
        checked={withKey}
        onChange={(_, { checked }) => {
          setter.chooseKey(checked === true)
        }}
      />
    </Card>
  )
}

/** How many names were found, and where. */
export function namesFound({ list: { names, area }, sheet }: Pupils): string {
  return `${counted(names.length, 'name')} in ${sheet}, ${areaAddress(area)}.`
}
