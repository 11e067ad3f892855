import { Button } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import { RUNGS } from '../../../src/items/rungs'
import { FAULTS } from '../../../src/answers/faults'
import { byNeed } from '../../../src/marksheet/reports/classView'
import { whyNeed } from '../../../src/mastery/explain'
import { nextType } from '../../../src/mastery/support'
import { Card } from '../../common/Card'
import { useSettings } from '../../common/settings'
import { counted } from '../../common/words'
import type { Person } from './people'

interface Opening {
  readonly onOpen: (person: Person) => void
}

/** The class in a list, most in need first: name, evidence, what to do next. Slips, fine and not enough seen are folded. */
export function NeedList({ people, onOpen }: { readonly people: readonly Person[] } & Opening): ReactElement {
  const sorted = [...people].sort(byNeed)
  const isKind = (...kinds: string[]) => sorted.filter(({ judgement }) => kinds.includes(judgement.need.kind))
  const flagged = sorted.filter(({ judgement }) => judgement.needsSupport)
  const seen = (person: Person) => person.judgement.byType.some(({ tried }) => tried > 0)
  const none = isKind('none')
  return (
    <Card title="Who needs what">
      {flagged.length === 0 && <p>Nobody is flagged, as far as the answers show.</p>}
      <Needs people={flagged} onOpen={onOpen} />
      {flagged.length > 0 && (
        <p className="quiet">
          A flag is a prompt for your own judgement, never a verdict on a child: look at the working first.
        </p>
      )}
      <Folded title="Typing to look at" people={isKind('typing')} onOpen={onOpen} />
      <Folded title="Slips only" people={isKind('slips')} onOpen={onOpen} />
      <Folded title="Everything right" people={none.filter(seen)} onOpen={onOpen} />
      <Folded title="Nothing answered" people={none.filter((each) => !seen(each))} onOpen={onOpen} />
    </Card>
  )
}

function Folded({
  title,
  people,
  onOpen,
}: { readonly title: string; readonly people: readonly Person[] } & Opening) {
  if (people.length === 0) return null
  return (
    <details>
      <summary>
        {title}: {counted(people.length, 'pupil')}
      </summary>
      <Needs people={people} onOpen={onOpen} />
    </details>
  )
}

function Needs({ people, onOpen }: { readonly people: readonly Person[] } & Opening) {
  const { mastery, words } = useSettings()
  return (
    <ul className="needs">
      {people.map((person) => (
        <li key={person.key}>
          <Button
            appearance="transparent"
            size="small"
            onClick={() => {
              onOpen(person)
            }}
          >
            {person.name}
          </Button>
          {person.judgement.need.sentence !== '' && (
            <details>
              <summary>{person.judgement.need.sentence}</summary>
              <p className="quiet">{whyNeed(person.judgement, mastery, words)}</p>
            </details>
          )}
          <p className="quiet">{nextStep(person)}</p>
        </li>
      ))}
    </ul>
  )
}

function nextStep({ judgement }: Person): string {
  const { kind, fault, type } = judgement.need
  const help = FAULTS.find(({ id }) => id === fault)?.help
  if (help !== undefined) return help
  if (kind === 'family' && type !== null) return `Next: ${RUNGS[type].objective}.`
  if (kind === 'no pattern') return 'Next: look at the working together.'
  if (kind === 'typing') return 'Next: look where the answers were typed.'
  const next = nextType(judgement)
  return next === null ? '' : `Next: ${RUNGS[next].objective}.`
}
