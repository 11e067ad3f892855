import type { ReactElement } from 'react'
import { ChoiceField } from '../common/ChoiceField'

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
    <ChoiceField
      label={label}
      value={value}
      options={Array.from({ length: most - least + 1 }, (_, index) => [least + index, String(least + index)])}
      onChoose={onChoose}
    />
  )
}
