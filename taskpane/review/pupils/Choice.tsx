import { Select } from '@fluentui/react-components'
import { useId, type ReactElement } from 'react'

/** A choice among a few words, behind its label. */
export function Choice<Value extends string>(props: {
  readonly label: string
  readonly value: Value
  readonly options: readonly (readonly [value: Value, words: string])[]
  readonly onChoose: (value: Value) => void
}): ReactElement {
  const { label, value, options, onChoose } = props
  const id = useId()
  return (
    <div className="choice">
      <label htmlFor={id}>{label}</label>
      <Select
        id={id}
        size="small"
        value={value}
        onChange={(_, chosen) => {
          const option = options.find(([each]) => each === chosen.value)
          if (option) onChoose(option[0])
        }}
      >
        {options.map(([each, words]) => (
          <option key={each} value={each}>
            {words}
          </option>
        ))}
      </Select>
    </div>
  )
}
