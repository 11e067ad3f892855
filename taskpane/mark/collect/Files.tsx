import { useId, type ReactElement } from 'react'
import { useBusy } from '../../common/pane'
import type { Collector } from './collector'

/** Chooses the home workbooks that came back. */
export function Files({ collector }: { readonly collector: Collector }): ReactElement {
  const busy = useBusy()
  const id = useId()
  return (
    <>
      <p>
        Choose the home workbooks that came back, or the answers of a form (.xlsx). You see whose they are
        before anything is written.
      </p>
      <label htmlFor={id}>Files that came back</label>
      <input
        id={id}
        type="file"
        multiple
        accept=".xlsx"
        disabled={busy}
        onChange={({ currentTarget }) => {
          const files = [...(currentTarget.files ?? [])]
          currentTarget.value = ''
          if (files.length > 0) void collector.takeFiles(files)
        }}
      />
      <p className="quiet">The files are read on this computer and sent nowhere.</p>
    </>
  )
}
