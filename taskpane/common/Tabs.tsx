import { useRef, type KeyboardEvent, type ReactElement } from 'react'

/** Where a key leads from one tab of a row to another; undefined for other keys. */
const STEPS: Readonly<Record<string, (at: number, count: number) => number>> = {
  ArrowRight: (at, count) => (at + 1) % count,
  ArrowLeft: (at, count) => (at + count - 1) % count,
  Home: () => 0,
  End: (_, count) => count - 1,
}

/**
 * The row of tabs, after the pattern of the W3C's ARIA Authoring Practices Guide (tabs that open as they get the focus): Tab leads to the
 * open one, the arrow keys to the others.
 */
export function Tabs(props: {
  readonly areas: readonly { readonly id: string; readonly name: string }[]
  readonly label?: string
  readonly open: string
  readonly onOpen: (id: string) => void
}): ReactElement {
  const { areas, open, onOpen } = props
  const row = useRef<HTMLDivElement>(null)
  const onKeyDown = (event: KeyboardEvent) => {
    const at = areas.findIndex(({ id }) => id === open)
    const next = areas[STEPS[event.key]?.(at, areas.length) ?? -1]
    if (!next) return
    event.preventDefault()
    onOpen(next.id)
    row.current?.querySelector<HTMLElement>(`#tab-${next.id}`)?.focus()
  }
  return (
    <div ref={row} className="tabs" role="tablist" aria-label={props.label ?? 'Areas'} onKeyDown={onKeyDown}>
      {areas.map(({ id, name }) => (
        <button
          key={id}
          type="button"
          role="tab"
          id={`tab-${id}`}
          aria-controls={`area-${id}`}
          aria-selected={id === open}
          tabIndex={id === open ? 0 : -1}
          onClick={() => {
            onOpen(id)
          }}
        >
          {name}
        </button>
      ))}
    </div>
  )
}
