import { useId, type ReactElement, type ReactNode } from 'react'

/** A part of an area under a heading of its own. */
export function Card({
  title,
  children,
}: {
  readonly title: string
  readonly children: ReactNode
}): ReactElement {
  const id = useId()
  return (
    <section className="card" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {children}
    </section>
  )
}
