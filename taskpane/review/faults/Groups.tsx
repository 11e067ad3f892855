import { Button, Input } from '@fluentui/react-components'
import { useId, useMemo, useState, type ReactElement } from 'react'
import { workFor } from '../../../src/marksheet/reports/needs'
import { groupTitle } from '../../../src/mastery/need'
import type { SetWish } from '../../../src/marksheet/setting/nextSet'
import { supportGroups, type SupportGroup } from '../../../src/mastery/support'
import { Card } from '../../common/Card'
import { counted } from '../../common/words'
import { Work, type OnWrite } from './NextSet'
import type { Person } from '../pupils/people'

/** Groups of pupils with the same need, none larger than the teacher wants, each with a next set. */
export function Groups(props: {
  readonly people: readonly Person[]
  readonly size: number
  readonly wish: SetWish
  readonly onSize: (size: number) => void
  readonly onOpen: (person: Person) => void
  readonly onWrite: OnWrite
}): ReactElement {
  const { people, size, wish, onSize, onOpen, onWrite } = props
  const id = useId()
  const [text, setText] = useState(String(size))
  const groups = useMemo(() => supportGroups(people, size), [people, size])
  return (
    <Card title="Groups by need">
      <div className="choice">
        <label htmlFor={id}>Most pupils in a group</label>
        <Input
          id={id}
          size="small"
          type="number"
          min={1}
          max={40}
          value={text}
          onChange={(_, { value }) => {
            setText(value)
            const wanted = Number(value)
            if (Number.isSafeInteger(wanted) && wanted >= 1) onSize(wanted)
          }}
        />
      </div>
      <p className="quiet">
        Each pupil is in one group, that of pupils with the same need. Groups are a start for your own
        judgement.
      </p>
      {groups.length === 0 && <p>Nobody is flagged, as far as the answers show.</p>}
      {groups.map((group, index) => (
        <Group
          key={`${groupTitle(group.need)} ${group.pupils[0]?.key ?? ''}`}
          group={group}
          title={`Group ${index + 1}: ${groupTitle(group.need)}`}
          wish={wish}
          onOpen={onOpen}
          onWrite={onWrite}
        />
      ))}
    </Card>
  )
}

function Group(props: {
  readonly group: SupportGroup<Person>
  readonly title: string
  readonly wish: SetWish
  readonly onOpen: (person: Person) => void
  readonly onWrite: OnWrite
}) {
  const { group, title, wish, onOpen, onWrite } = props
  const work = useMemo(() => workFor(group.need, wish), [group.need, wish])
  return (
    <section className="group">
      <h3>{title}</h3>
      <p>{counted(group.pupils.length, 'pupil')}</p>
      <ul className="names">
        {group.pupils.map((person) => (
          <li key={person.key}>
            <Button
              appearance="outline"
              size="small"
              onClick={() => {
                onOpen(person)
              }}
            >
              {person.name}
            </Button>
          </li>
        ))}
      </ul>
      <Work
        work={work}
        fault={group.need.fault}
        whose={title}
        names={group.pupils.map(({ name }) => name)}
        onWrite={onWrite}
      />
    </section>
  )
}
