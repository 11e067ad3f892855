import { Button } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import type { Notice as Said } from './runner'
import { CLOSE } from './icons'

/** What was done or went wrong: a sign and a word, a sentence, and what to do next. A problem is read out at once. */
export function Notice({
  said,
  onClose,
}: {
  readonly said: Said
  readonly onClose?: () => void
}): ReactElement {
  const isProblem = said.kind === 'problem'
  return (
    <div className={`notice ${said.kind}`} role={isProblem ? 'alert' : 'status'}>
      <span className="sign" aria-hidden="true">
        {isProblem ? '!' : '✓'}
      </span>
      <p>
        <strong>{isProblem ? 'Not done. ' : ''}</strong>
        {said.sentence} {said.next !== '' && <span className="next">{said.next}</span>}
      </p>
      {onClose && (
        <Button
          appearance="subtle"
          size="small"
          icon={CLOSE}
          aria-label="Close this message"
          onClick={onClose}
        />
      )}
    </div>
  )
}
