import { Field, Select } from '@fluentui/react-components'
import type { ReactElement } from 'react'

/** A choice among a few, each with the words that stand for it, under its label. */
export function ChoiceField<Value extends string | number>(props: {
  readonly label: string
  readonly hint?: string | undefined
  readonly value: Value
  readonly options: readonly (readonly [value: Value, words: string])[]
  readonly onChoose: (value: Value) => void
}): ReactElement {
  const { label, hint, value, options, onChoose } = props
  return (
    <Field label={label} hint={hint}>
      <Select
        value={String(value)}
        onChange={(_, chosen) => {
          const found = options.find(([each]) => String(each) === chosen.value)
          if (found) onChoose(found[0])
        }}
      >
        {options.map(([each, words]) => (
          <option key={each} value={each}>
            {words}
          </option>
        ))}
      </Select>
    </Field>
  )
}
