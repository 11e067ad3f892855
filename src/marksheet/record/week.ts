import { FAULTS } from '../../answers/faults'
import type { GroupNeed } from '../../mastery/support'
import { printQuestion } from '../../arithmetic/question'
import { OWN_SHEET } from '../layout/find'
import { LOOKS } from '../marking/looks'
import { groupTitle } from '../../mastery/need'
import type { GroupWork } from '../reports/needs'
import type { TableCell, TableSheet } from '../marking/plan'
import { bold, exampleRows, inLine, plain } from '../reports/pupilReport'

/** A group of this week: the pupils' names, and what they work at. */
export interface WeekGroup {
  readonly names: readonly string[]
  readonly work: GroupWork
}

/** What this week's page is made from. `date` as it is to be read. */
export interface Week {
  readonly className: string
  readonly date: string
  readonly byNeed: readonly (WeekGroup & { readonly need: GroupNeed })[]
}

const CAUTION =
  'Groups and faults are prompts for your own judgement, never a verdict on a child. Personal data: keep as your school’s policy says.'

/** This week's page, to print: the groups, a next set for each, and the example to reteach, of the first group. */
export function planWeek({ className, date, byNeed }: Week): TableSheet {
  const title = [className, date].filter((part) => part !== '').join(', ')
  return {
    name: 'This week',
    rows: [
      [bold(`${OWN_SHEET}This week`)],
      [plain(title)],
      [plain('Please note'), plain(CAUTION)],
      [],
      [heading('Groups by need'), heading('')],
      ...(byNeed.length === 0 ? [[plain(''), plain('Nobody is flagged, as far as the answers show.')]] : []),
      ...byNeed.flatMap((group, index) => [
        [bold(`Group ${index + 1}`), bold(groupTitle(group.need))],
        ...groupRows(group),
        ...helpRows(group.need),
      ]),
      ...reteachRows(byNeed[0]),
    ],
    widths: [26, 80],
  }
}

function groupRows({ names, work }: WeekGroup): TableCell[][] {
  return [
    [plain('Pupils'), plain(names.join(', '))],
    [plain('Next set'), plain(work.problem ?? inLine(work.questions.map(printQuestion)))],
  ]
}

function reteachRows(group: WeekGroup | undefined): TableCell[][] {
  const example = group?.work.example
  if (!group || !example) return []
  const { faulty } = group.work
  return [
    [],
    [heading('Reteach'), heading('')],
    ...exampleRows('Example', example),
    ...(faulty === null
      ? []
      : [[plain('With the fault'), plain(`${example.text} = ${faulty}. What went wrong here?`)]]),
  ]
}

function heading(text: string): TableCell {
  return bold(text, LOOKS.absent.fill)
}

function helpRows({ fault }: GroupNeed): TableCell[][] {
  const help = FAULTS.find(({ id }) => id === fault)?.help
  return help === undefined ? [] : [[plain('What helps'), plain(help)]]
}
