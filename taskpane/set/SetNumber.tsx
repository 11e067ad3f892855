import { Button, Field, Input } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import { AGAIN } from '../common/icons'

interface Parts {
  readonly typed: string
  readonly onType: (typed: string) => void
  readonly onAgain: () => void
}

/** The set's number or word, by which the same is drawn again elsewhere, and a button for another one. */
export function SetNumber({ typed, onType, onAgain }: Parts): ReactElement {
  return (
    <div className="number">
      <Field label="Set number">
        <Input
          value={typed}
          autoComplete="off"
          onChange={(_, { value }) => {
            onType(value)
          }}
        />
      </Field>
      <Button icon={AGAIN} onClick={onAgain}>
        Another draw
      </Button>
    </div>
  )
}
