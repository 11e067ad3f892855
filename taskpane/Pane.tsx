import { Button, FluentProvider } from '@fluentui/react-components'
import {
  lazy,
  Suspense,
  useEffect,
  useRef,
  useState,
  useSyncExternalStore,
  type ComponentType,
  type ReactElement,
} from 'react'
import { AREAS, type AreaEntry } from './areas'
import { GEAR } from './common/icons'
import { LoadGuard } from './common/LoadGuard'
import { NAVIGATION } from './common/navigation'
import { OpenContext, RUNNER, useStore } from './common/pane'
import { useFollowing } from './common/watching'
import { StatusBar } from './StatusBar'
import { Tabs } from './common/Tabs'
import { isDark, THEMES, watchTheme } from './theme'

const LOADED = new Map<string, ComponentType>(
  AREAS.map(({ id, load }) => [id, lazy(async () => ({ default: await load() }))]),
)

const SettingsPage = lazy(async () => ({
  default: (await import(/* webpackChunkName: "settings" */ './settings/SettingsPage')).SettingsPage,
}))

/** The pane: a tab for each area, the area that is open, and the status line. An area that was opened keeps its state. */
export function Pane(): ReactElement {
  useFollowing()
  const dark = useSyncExternalStore(watchTheme, isDark)
  const { open, toModel } = useStore(NAVIGATION)
  const [visited, setVisited] = useState<readonly string[]>([open])
  if (!visited.includes(open)) setVisited([...visited, open])
  const [setting, setSetting] = useState(false)
  const gear = useRef<HTMLButtonElement>(null)
  const show = (id: string) => {
    setSetting(false)
    RUNNER.hush()
    NAVIGATION.show(id)
  }
  useEffect(() => {
    if (toModel === null) return
    document.querySelector('.pane > main')?.scrollTo({ top: 0 })
    document.getElementById(`tab-${NAVIGATION.state().open}`)?.focus()
  }, [toModel])
  return (
    <FluentProvider theme={dark ? THEMES.dark : THEMES.light} className={dark ? 'pane dark' : 'pane'}>
      <header>
        <div className="title">
          <h1>
            <img src="assets/icon-32.png" width="20" height="20" alt="" />
            Columnwise
          </h1>
          <Button
            ref={gear}
            className="gear"
            size="small"
            appearance="subtle"
            icon={GEAR}
            aria-label="Settings"
            aria-expanded={setting}
            onClick={() => {
              setSetting(!setting)
            }}
          />
        </div>
        <Tabs areas={AREAS} open={open} onOpen={show} />
      </header>
      <main>
        {setting && (
          <LoadGuard name="Settings">
            <Suspense fallback={<p role="status">Opening Settings …</p>}>
              <SettingsPage
                onClose={() => {
                  setSetting(false)
                  gear.current?.focus()
                }}
              />
            </Suspense>
          </LoadGuard>
        )}
        {AREAS.filter(({ id }) => visited.includes(id)).map((area) => (
          <AreaPanel key={area.id} area={area} isOpen={!setting && area.id === open} />
        ))}
      </main>
      <StatusBar />
    </FluentProvider>
  )
}

function AreaPanel({ area: { id, name }, isOpen }: { readonly area: AreaEntry; readonly isOpen: boolean }) {
  const Area = LOADED.get(id)
  return (
    <div role="tabpanel" id={`area-${id}`} aria-labelledby={`tab-${id}`} hidden={!isOpen}>
      <LoadGuard name={name}>
        <OpenContext value={isOpen}>
          <Suspense fallback={<p role="status">Opening {name} …</p>}>{Area && <Area />}</Suspense>
        </OpenContext>
      </LoadGuard>
    </div>
  )
}
