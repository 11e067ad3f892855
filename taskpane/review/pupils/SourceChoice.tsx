import { useMemo, type ReactElement } from 'react'
import { classesIn } from '../../../src/marksheet/record/record'
import { Choice } from './Choice'
import { peopleInRecord, peopleOnSheet, type Person } from './people'
import type { ReviewerState } from '../reviewer'

/** Whether the sheet in front is reviewed, or a class of Record over the weeks. */
export type Source = { readonly kind: 'sheet' } | { readonly kind: 'record'; readonly className: string }

/** The pupils to review, by the source. */
export function usePeople({ seen, record, settings }: ReviewerState, source: Source): Person[] {
  const { className, mastery } = settings
  return useMemo(() => {
    const rows = record?.rows ?? []
    return source.kind === 'record'
      ? peopleInRecord(rows, source.className, mastery)
      : peopleOnSheet(seen?.pupils ?? [], rows, className)
  }, [seen, record, source, className, mastery])
}

const SHEET = 'sheet'

/** The choice between the sheet in front and the classes in Record; nothing where Record is empty. */
export function SourceChoice(props: {
  readonly state: ReviewerState
  readonly source: Source
  readonly onChoose: (source: Source) => void
}): ReactElement | null {
  const { state, source, onChoose } = props
  const classes = classesIn(state.record?.rows ?? [])
  if (classes.length === 0) return null
  return (
    <Choice
      label="Judge by"
      value={source.kind === 'sheet' ? SHEET : String(classes.indexOf(source.className))}
      options={[
        [SHEET, 'this sheet'],
        ...classes.map((name, index) => [String(index), `Record: ${name}`] as const),
      ]}
      onChoose={(value) => {
        const className = classes[Number(value)]
        onChoose(
          value === SHEET || className === undefined ? { kind: 'sheet' } : { kind: 'record', className },
        )
      }}
    />
  )
}
