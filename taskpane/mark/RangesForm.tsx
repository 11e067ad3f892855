import { Button } from '@fluentui/react-components'
import { useState, type ReactElement } from 'react'
import type { Ranges } from '../../src/marksheet/layout/correct'
import { areaAddress, type Area } from '../../src/marksheet/layout/matrix'
import { problemOf } from '../../src/office/edit/errors'
import { readSelection } from '../../src/office/workbook/read'
import { SELECT } from '../common/icons'
import { Notice } from '../common/Notice'
import { useBusy, useRunner } from '../common/pane'
import type { Notice as Said } from '../common/runner'

const PARTS = [
  ['names', 'Names'],
  ['questions', 'Questions'],
  ['answers', 'Answers'],
] as const

/**
 * The three ranges of a marksheet. Each can be shown in the sheet and replaced by what is selected there; once all three are there they are
 * handed on, and where they make no marksheet the reason is shown and they can be corrected further.
 */
export function RangesForm(props: {
  readonly ranges: Partial<Ranges>
  readonly sheetId: string
  readonly onCorrect: (ranges: Ranges) => void
  readonly onShow: (area: Area) => void
}): ReactElement {
  const { sheetId, onCorrect, onShow } = props
  const [draft, setDraft] = useState(props.ranges)
  const [problem, setProblem] = useState<Said | null>(null)
  const runner = useRunner()
  const busy = useBusy()
  const take = async (part: keyof Ranges) => {
    const selection = await runner.run('Reading the selection', readSelection)
    if (!selection) return
    if (selection.sheetId !== sheetId) {
      setProblem({
        kind: 'problem',
        sentence: `The selection is on the sheet ${selection.sheet}.`,
        next: 'Select cells on the sheet shown here.',
      })
      return
    }
    const now = { ...draft, [part]: selection.area }
    setDraft(now)
    setProblem(null)
    const { names, questions, answers } = now
    if (!names || !questions || !answers) return
    try {
      onCorrect({ names, questions, answers })
    } catch (error) {
      const { sentence, next } = problemOf(error)
      setProblem({ kind: 'problem', sentence, next })
    }
  }
  return (
    <>
      <ul className="ranges">
        {PARTS.map(([part, word]) => {
          const area = draft[part]
          return (
            <li key={part}>
              <span className="part">{word}</span>
              {area ? (
                <Button
                  appearance="transparent"
                  className="address"
                  aria-label={`${word}: show ${areaAddress(area)} in the sheet`}
                  onClick={() => {
                    onShow(area)
                  }}
                >
                  {areaAddress(area)}
                </Button>
              ) : (
                <span className="address quiet">not chosen</span>
              )}
              <Button
                size="small"
                icon={SELECT}
                disabled={busy}
                aria-label={`${word}: use my selection`}
                onClick={() => void take(part)}
              >
                Use my selection
              </Button>
            </li>
          )
        })}
      </ul>
      {problem && <Notice said={problem} />}
    </>
  )
}
