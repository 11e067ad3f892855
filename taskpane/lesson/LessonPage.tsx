import { Button, Field, Select } from '@fluentui/react-components'
import { lazy, Suspense, useEffect, useRef, useState, type ComponentType, type ReactElement } from 'react'
import { BACK } from '../common/icons'
import { LoadGuard } from '../common/LoadGuard'
import './lesson.css'
import { LESSON_PARTS } from './parts'

const LOADED = new Map<string, ComponentType>(
  LESSON_PARTS.map(({ id, load }) => [id, lazy(async () => ({ default: await load() }))]),
)

/** What stands around the marksheet in a lesson: one thing to make at a time. One that was chosen keeps its state. */
export function LessonPage({ onBack }: { readonly onBack: () => void }): ReactElement {
  const [chosen, setChosen] = useState(LESSON_PARTS[0]?.id ?? '')
  const [visited, setVisited] = useState<readonly string[]>([chosen])
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => heading.current?.focus(), [])
  const part = LESSON_PARTS.find(({ id }) => id === chosen)
  return (
    <>
      <div className="heading">
        <h2 ref={heading} tabIndex={-1}>
          Lesson, starters and puzzles
        </h2>
        <Button size="small" appearance="subtle" icon={BACK} onClick={onBack}>
          Set
        </Button>
      </div>
      <Field label="What to make" hint={part?.says}>
        <Select
          value={chosen}
          onChange={(_, { value }) => {
            setChosen(value)
            setVisited((ids) => (ids.includes(value) ? ids : [...ids, value]))
          }}
        >
          {LESSON_PARTS.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </Select>
      </Field>
      {LESSON_PARTS.filter(({ id }) => visited.includes(id)).map(({ id, name }) => {
        const Part = LOADED.get(id)
        return (
          <div key={id} hidden={id !== chosen}>
            <LoadGuard name={name}>
              <Suspense fallback={<p role="status">Opening {name} …</p>}>{Part && <Part />}</Suspense>
            </LoadGuard>
          </div>
        )
      })}
    </>
  )
}
