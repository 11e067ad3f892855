import { lazy, Suspense, useState, type ReactElement } from 'react'
import { Card } from '../common/Card'
import { LoadGuard } from '../common/LoadGuard'
import type { AtHome } from './atHome'

const HomeWorkbooks = lazy(async () => ({
  default: (await import(/* webpackChunkName: "home" */ './HomeWorkbooks')).HomeWorkbooks,
}))

/** Home workbooks behind one line; their code is loaded when it is opened. `whose` tells one such line from others to screen readers. */
export function HomeFold(props: { readonly atHome: AtHome; readonly whose?: string }): ReactElement {
  const { atHome, whose } = props
  const [wasOpened, setWasOpened] = useState(false)
  return (
    <details
      onToggle={({ currentTarget }) => {
        if (currentTarget.open) setWasOpened(true)
      }}
    >
      <summary aria-label={whose && `Home workbooks: ${whose}`}>Home workbooks</summary>
      {wasOpened && (
        <LoadGuard name="Home workbooks">
          <Suspense fallback={<p role="status">Opening Home workbooks …</p>}>
            <HomeWorkbooks atHome={atHome} />
          </Suspense>
        </LoadGuard>
      )}
    </details>
  )
}

/** The same as a card, where a set can be taken home. */
export function HomeCard({ atHome }: { readonly atHome: AtHome }): ReactElement {
  return (
    <Card title="To answer at home">
      <HomeFold atHome={atHome} />
    </Card>
  )
}
