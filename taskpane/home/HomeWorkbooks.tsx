import { Button } from '@fluentui/react-components'
import { useState, type ReactElement } from 'react'
import { HOME_CHOICES, type HomeChoices } from '../../src/home/choices'
import type { HomeSet } from '../../src/home/format'
import { namedSets } from '../../src/home/fromMarksheet'
import { homeWorkbook } from '../../src/home/workbook'
import { openNewWorkbook } from '../../src/office/home/newWorkbook'
import { ChoiceField } from '../common/ChoiceField'
import { CELLS } from '../common/icons'
import { useBusy, useRunner } from '../common/pane'
import type { AtHome } from './atHome'

/** What is chosen for whoever types a name. */
const ANYONE = -1

type Options<Choice extends keyof HomeChoices> = readonly (readonly [HomeChoices[Choice], string])[]

const FEEDBACK: Options<'feedback'> = [
  ['none', 'Nothing'],
  ['look-again', 'Right, or look again'],
  ['hints', 'Right, or look again with a hint'],
]
const WHEN: Options<'when'> = [
  ['each', 'After each answer'],
  ['all', 'Once all are in'],
]
const PAPER: Options<'paper'> = [
  ['lines', 'In lines'],
  ['squares', 'In lines, with squared cells to work in'],
]

/** Opens home workbooks, one after another: for whoever types a name, or for one child. */
export function HomeWorkbooks({ atHome }: { readonly atHome: AtHome }): ReactElement {
  const { common, children } = atHome
  const runner = useRunner()
  const [choices, setChoices] = useState(HOME_CHOICES)
  const [chosen, setChosen] = useState(common ? ANYONE : 0)
  const whose = children[chosen] ? chosen : common ? ANYONE : 0
  const busy = useBusy() || (!common && children.length === 0)
  const open = async () => {
    const home = homeFor(atHome, whose)
    if (!home) return
    const isOpen = await runner.run('Opening the home workbook', async () => {
      await openNewWorkbook(homeWorkbook(home, choices).bytes)
      return true
    })
    if (isOpen !== true) return
    const name = children[whose]?.name
    const next = name === undefined ? undefined : children[whose + 1]
    if (next) setChosen(whose + 1)
    runner.say(
      name === undefined
        ? 'The home workbook is open in a window of its own.'
        : `The home workbook for ${name} is open in a window of its own.`,
      next
        ? `Look at it and save it; then open the one for ${next.name}.`
        : 'Look at it and save it before you send it.',
    )
  }
  return (
    <>
      <div className="recipe">
        <ChoiceField
          label="For"
          value={whose}
          options={[
            ...(common ? [[ANYONE, 'Anyone: each child types a name'] as const] : []),
            ...children.map(({ name }, index) => [index, name] as const),
          ]}
          onChoose={setChosen}
        />
        <ChoiceField
          label="It says"
          options={FEEDBACK}
          value={choices.feedback}
          onChoose={(feedback) => {
            setChoices({ ...choices, feedback })
          }}
        />
        {choices.feedback !== 'none' && (
          <ChoiceField
            label="When"
            options={WHEN}
            value={choices.when}
            onChoose={(when) => {
              setChoices({ ...choices, when })
            }}
          />
        )}
        <ChoiceField
          label="Questions stand"
          options={PAPER}
          value={choices.paper}
          onChoose={(paper) => {
            setChoices({ ...choices, paper })
          }}
        />
      </div>
      <div className="buttons end">
        <Button appearance="primary" icon={CELLS} disabled={busy} onClick={() => void open()}>
          Open as a new workbook
        </Button>
      </div>
      <p className="quiet where">
        It opens in any spreadsheet program and holds no full name: a first name and initial, or a code. Look
        at it before you send it, and send it by the school’s own channel.
        {choices.feedback !== 'none' &&
          ' Whoever digs can find the answers in it: it is for practice, not for a test.'}
      </p>
    </>
  )
}

/** The home workbook for a child, or for whoever types a name. Codes go by the names of all. */
function homeFor({ common, children }: AtHome, whose: number): HomeSet | null {
  if (whose === ANYONE) return common && { child: null, questions: common }
  const sets = namedSets(
    children.map(({ name }) => name),
    children.map(({ questions }) => questions),
  )
  return sets[whose] ?? null
}
