import { Field, Select } from '@fluentui/react-components'
import type { ReactElement } from 'react'

/** A choice of how many, from the least to the most. */
export function CountField(props: {
  readonly label: string
  readonly least: number
  readonly most: number
  readonly value: number
  readonly onChoose: (count: number) => void
}): ReactElement {
  const { label, least, most, value, onChoose } = props
  return (
    <Field label={label}>
      <Select
        value={String(value)}
        onChange={(_, chosen) => {
          onChoose(Number(chosen.value))
        }}
      >
        {Array.from({ length: most - least + 1 }, (_, index) => (
          <option key={index} value={least + index}>
            {least + index}
          </option>
        ))}
      </Select>
    </Field>
  )
}
