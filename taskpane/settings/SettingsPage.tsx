import { Button, Checkbox, Field, Input } from '@fluentui/react-components'
import { useEffect, useRef, useState, type ReactElement } from 'react'
import { STATUSES } from '../../src/mastery/standing'
import { statusSign } from '../../src/mastery/support'
import { problemOf } from '../../src/office/edit/errors'
import { DEFAULT_SETTINGS, keepSettings, readSettings } from '../../src/office/workbook/settings'
import { Card } from '../common/Card'
import { ChoiceField } from '../common/ChoiceField'
import { Notice } from '../common/Notice'
import { useRunner } from '../common/pane'
import type { Notice as Said } from '../common/runner'
import {
  CARRIES,
  draftOf,
  EXCHANGES,
  GROUPS,
  RATES,
  readDraft,
  THRESHOLDS,
  type Draft,
  type NumberField,
} from './fields'
import { RemoveCard } from './RemoveCard'

/** All settings in one place, each with its reason; kept in the workbook. */
export function SettingsPage({ onClose }: { readonly onClose: () => void }): ReactElement {
  const runner = useRunner()
  const [draft, setDraft] = useState(() => draftOf(readSettings()))
  const [problem, setProblem] = useState<Said | null>(null)
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => heading.current?.focus(), [])
  const change = (changed: Partial<Draft>) => {
    setDraft((now) => ({ ...now, ...changed }))
    setProblem(null)
  }
  const keep = async () => {
    const read = readDraft(draft)
    if ('problem' in read) {
      setProblem({ kind: 'problem', sentence: read.problem, next: 'Correct it and try again.' })
      return
    }
    try {
      await keepSettings(read.settings)
      runner.say('The settings are kept in this workbook.', 'Mark again where they should count.')
      onClose()
    } catch (error) {
      const { sentence, next } = problemOf(error)
      setProblem({ kind: 'problem', sentence, next })
    }
  }
  const numbers = (fields: readonly NumberField<keyof Draft['numbers']>[]) =>
    fields.map(({ key, label, reason, perCent }) => (
      <Field key={key} label={label} hint={reason} orientation="vertical">
        <Input
          value={draft.numbers[key]}
          inputMode="decimal"
          autoComplete="off"
          contentAfter={perCent ? '%' : undefined}
          onChange={(_, { value }) => {
            change({ numbers: { ...draft.numbers, [key]: value } })
          }}
        />
      </Field>
    ))
  return (
    <div
      className="settings"
      onKeyDown={({ key }) => {
        if (key === 'Escape') onClose()
      }}
    >
      <form
        onSubmit={(event) => {
          event.preventDefault()
          void keep()
        }}
      >
        <h2 ref={heading} tabIndex={-1}>
          Settings
        </h2>
        <p className="quiet">They are kept in this workbook and nowhere else.</p>
        <Card title="Marking">
          <Checkbox
            label="Flags on names"
            checked={draft.flags}
            onChange={(_, { checked }) => {
              change({ flags: checked === true })
            }}
          />
          <p className="quiet reason">
            Names of pupils who need support stand out. Off before a screen is shared.
          </p>
          <Checkbox
            label="Write the Mastery sheet"
            checked={draft.masterySheet}
            onChange={(_, { checked }) => {
              change({ masterySheet: checked === true })
            }}
          />
          <p className="quiet reason">
            Pupils by type on a sheet of its own, written anew with each marking.
          </p>
          <Field label="Class" hint="Record keeps the answers of each class apart by this name.">
            <Input
              value={draft.className}
              autoComplete="off"
              onChange={(_, { value }) => {
                change({ className: value })
              }}
            />
          </Field>
        </Card>
        <Card title="How columns are written">
          <ChoiceField
            label="A ten received"
            options={EXCHANGES}
            value={draft.notation.exchange}
            onChoose={(exchange) => {
              change({ notation: { ...draft.notation, exchange } })
            }}
          />
          <ChoiceField
            label="A ten carried"
            options={CARRIES}
            value={draft.notation.carry}
            onChoose={(carry) => {
              change({ notation: { ...draft.notation, carry } })
            }}
          />
          <p className="quiet reason">
            In Model, in the large window, on sheets and in print: choose what your school’s policy says.
          </p>
        </Card>
        <Card title="Secure, nearly secure, needs support">{numbers(THRESHOLDS)}</Card>
        <Card title="Words for them">
          {STATUSES.toReversed().map((status) => (
            <Field key={status} label={`${statusSign(status)} ${status}`}>
              <Input
                value={draft.words[status]}
                autoComplete="off"
                onChange={(_, { value }) => {
                  change({ words: { ...draft.words, [status]: value } })
                }}
              />
            </Field>
          ))}
          <p className="quiet reason">
            Used in Review and on the Mastery sheet: choose those of your school.
          </p>
        </Card>
        <Card title="Groups">{numbers(GROUPS)}</Card>
        <Card title="What is assumed of answers">{numbers(RATES)}</Card>
        {problem && <Notice said={problem} />}
        <div className="buttons">
          <Button type="submit" appearance="primary">
            Keep
          </Button>
          <Button
            onClick={() => {
              change(draftOf({ ...DEFAULT_SETTINGS, className: draft.className }))
            }}
          >
            Back to the defaults
          </Button>
          <Button onClick={onClose}>Close without keeping</Button>
        </div>
      </form>
      <RemoveCard
        onRemoved={() => {
          change(draftOf(readSettings()))
        }}
      />
    </div>
  )
}
