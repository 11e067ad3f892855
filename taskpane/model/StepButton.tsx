import { Button } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import { stepByKey } from './playing'

/** A button that does what a key does: leads to another of `count` steps. It keeps the focus where it leads no further. */
export function StepButton(props: {
  readonly label: string
  readonly icon: ReactElement
  readonly keyName: 'ArrowLeft' | 'ArrowRight' | 'Home' | 'End'
  readonly step: number
  readonly count: number
  readonly onStep: (step: number) => void
  readonly primary?: boolean
}): ReactElement {
  const { label, icon, keyName, step, count, onStep, primary = false } = props
  const to = stepByKey(keyName, step, count) ?? step
  return (
    <Button
      icon={icon}
      appearance={primary ? 'primary' : 'secondary'}
      disabledFocusable={to === step}
      aria-keyshortcuts={keyName}
      onClick={() => {
        onStep(to)
      }}
    >
      {label}
    </Button>
  )
}
