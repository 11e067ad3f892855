import { Button, Checkbox, Switch } from '@fluentui/react-components'
import { lazy, Suspense, useEffect, useState, type ReactElement } from 'react'
import { areaAddress } from '../../src/marksheet/layout/matrix'
import { Card } from '../common/Card'
import { AGAIN, ERASE, INBOX, PEN, TICK } from '../common/icons'
import { useBusy, useRunner, useStore } from '../common/pane'
import { FRONT } from '../common/front'
import { useFront } from '../common/watching'
import { counted } from '../common/words'
import { Found } from './Found'
import { sharedMarker, type Marker, type MarkerState } from './marker'
import { RangesForm } from './RangesForm'

const QuickEntry = lazy(async () => ({
  default: (await import(/* webpackChunkName: "quick-entry" */ './entry/QuickEntry')).QuickEntry,
}))
const Result = lazy(async () => ({
  default: (await import(/* webpackChunkName: "result" */ './Result')).Result,
}))
const Collect = lazy(async () => ({
  default: (await import(/* webpackChunkName: "collect" */ './collect/Collect')).Collect,
}))

/** Mark: what was found on the sheet in front, then the marking of it and what came out. */
export function MarkArea(): ReactElement {
  const runner = useRunner()
  const marker = sharedMarker()
  const state = useStore(marker)
  useFront(marker.look)
  useEffect(() => {
    const watching = marker.watchTyping()
    watching.catch(runner.tell)
    return () => void watching.then((end) => end())
  }, [marker, runner])
  const [open, setOpen] = useState<'entry' | 'collect' | null>(null)
  const { seen, summary } = state
  if (seen === null) return <Waiting onLook={FRONT.turn} />
  const { reading, marksheets, leftOut } = seen
  const close = () => {
    setOpen(null)
    void marker.look()
  }
  const closeAndMark = () => {
    setOpen(null)
    void marker.mark()
  }
  if (open === 'entry')
    return (
      <Suspense fallback={<p role="status">Opening quick entry …</p>}>
        <QuickEntry seen={seen} onClose={close} onMark={closeAndMark} />
      </Suspense>
    )
  if (open === 'collect')
    return (
      <Suspense fallback={<p role="status">Opening Collect answers …</p>}>
        <Collect seen={seen} onClose={close} onMark={closeAndMark} />
      </Suspense>
    )
  return (
    <>
      <div className="heading">
        <h2 className="sheet-name">{reading.name}</h2>
        <LookAgain onLook={FRONT.turn} />
      </div>
      {marksheets.length > 0 ? (
        <Actions marker={marker} state={state} onOpen={setOpen} />
      ) : (
        <Nothing marker={marker} state={state} />
      )}
      {state.changed > 0 && (
        <p className="changed" role="status">
          {counted(state.changed, 'answer')} changed since. The colours follow by themselves; flags, notes,
          Mastery and the list below do when you press Mark again.
        </p>
      )}
      {summary && (
        <Suspense fallback={<p role="status">Opening the result …</p>}>
          <Result
            summary={summary}
            namesShown={state.settings.flags}
            onShow={(area) => void marker.show(area)}
          />
        </Suspense>
      )}
      <LeftOut sentences={leftOut} />
      {marksheets.map((marksheet) => (
        <Found
          key={areaAddress(marksheet.area)}
          marksheet={marksheet}
          matrix={reading.matrix}
          sheetId={reading.id}
          onCorrect={(ranges) => {
            marker.correct(marksheet, ranges)
          }}
          onShow={(area) => void marker.show(area)}
        />
      ))}
    </>
  )
}

/** What stands on the sheet and was not read, so that nobody takes it for marked. */
function LeftOut({ sentences }: { readonly sentences: readonly string[] }) {
  if (sentences.length === 0) return null
  return (
    <Card title="Left out">
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p className="quiet">
        Nothing was marked or counted there. If it should be, show where the names, questions and answers are
        with Use my selection.
      </p>
    </Card>
  )
}

function LookAgain({ onLook }: { readonly onLook: () => void }) {
  const busy = useBusy()
  return (
    <Button size="small" appearance="subtle" icon={AGAIN} disabled={busy} onClick={onLook}>
      Look again
    </Button>
  )
}

function Waiting({ onLook }: { readonly onLook: () => void }) {
  const busy = useBusy()
  if (busy) return <p className="quiet">Looking at the sheet …</p>
  return (
    <Card title="The sheet could not be read">
      <LookAgain onLook={onLook} />
    </Card>
  )
}

interface Parts {
  readonly marker: Marker
  readonly state: MarkerState
}

function Actions({
  marker,
  state: { summary, settings },
  onOpen,
}: Parts & { readonly onOpen: (part: 'entry' | 'collect') => void }) {
  const busy = useBusy()
  return (
    <div className="actions">
      <div className="buttons">
        <Button appearance="primary" icon={TICK} disabled={busy} onClick={() => void marker.mark()}>
          {summary ? 'Mark again' : 'Mark this sheet'}
        </Button>
        <Button
          icon={PEN}
          disabled={busy}
          onClick={() => {
            onOpen('entry')
          }}
        >
          Quick entry
        </Button>
        <Button
          icon={INBOX}
          disabled={busy}
          onClick={() => {
            onOpen('collect')
          }}
        >
          Collect answers
        </Button>
        <Button icon={ERASE} disabled={busy} onClick={() => void marker.clear()}>
          Clear marks
        </Button>
      </div>
      <Switch
        label="Flags on names"
        checked={settings.flags}
        disabled={busy}
        onChange={(_, { checked }) => void marker.showFlags(checked)}
      />
      <Checkbox
        label="Write the Mastery sheet too"
        checked={settings.masterySheet}
        disabled={busy}
        onChange={(_, { checked }) => void marker.chooseMasterySheet(checked === true)}
      />
    </div>
  )
}

function Nothing({ marker, state: { seen } }: Parts) {
  if (seen === null) return null
  return (
    <Card title="No marksheet here">
      <p>
        A marksheet is a list of pupils’ names with questions such as <span className="sum">7,214 − 86</span>{' '}
        above the answers, or beside them. None was found on this sheet.
      </p>
      <p>
        Open the sheet that holds one; or select its parts in this sheet, one after another, and press Use my
        selection for each.
      </p>
      <RangesForm
        ranges={{}}
        sheetId={seen.reading.id}
        onCorrect={(ranges) => {
          marker.correct(null, ranges)
        }}
        onShow={(area) => void marker.show(area)}
      />
    </Card>
  )
}
