import { FluentProvider, Tab, TabList } from '@fluentui/react-components'
import { lazy, Suspense, useState, useSyncExternalStore, type ComponentType, type ReactElement } from 'react'
import { AREAS, type AreaEntry } from './areas'
import { LoadGuard } from './common/LoadGuard'
import { StatusBar } from './StatusBar'
import { isDark, THEMES, watchTheme } from './theme'

const LOADED = new Map<string, ComponentType>(
  AREAS.map(({ id, load }) => [id, lazy(async () => ({ default: await load() }))]),
)

/** The pane: a tab for each area, the area that is open, and the status line. An area that was opened keeps its state. */
export function Pane(): ReactElement {
  const dark = useSyncExternalStore(watchTheme, isDark)
  const [open, setOpen] = useState(AREAS[0]?.id ?? '')
  const [visited, setVisited] = useState<readonly string[]>([open])
  const show = (id: string) => {
    setOpen(id)
    setVisited((ids) => (ids.includes(id) ? ids : [...ids, id]))
  }
  return (
    <FluentProvider theme={dark ? THEMES.dark : THEMES.light} className={dark ? 'pane dark' : 'pane'}>
      <header>
        <h1>
          <img src="assets/icon-32.png" width="20" height="20" alt="" />
          Columnwise
        </h1>
        <TabList
          selectedValue={open}
          onTabSelect={(_, { value }) => {
            show(String(value))
          }}
          aria-label="Areas"
        >
          {AREAS.map(({ id, name }) => (
            <Tab key={id} id={`tab-${id}`} value={id} aria-controls={`area-${id}`}>
              {name}
            </Tab>
          ))}
        </TabList>
      </header>
      <main>
        {AREAS.filter(({ id }) => visited.includes(id)).map((area) => (
          <AreaPanel key={area.id} area={area} isOpen={area.id === open} />
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
        <Suspense fallback={<p role="status">Opening {name} …</p>}>{Area && <Area />}</Suspense>
      </LoadGuard>
    </div>
  )
}
