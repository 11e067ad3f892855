import { FAULTS, type FaultId } from '../../answers/faults'
import type { ExchangeType } from '../../arithmetic/exchange'
import { printQuestion } from '../../arithmetic/question'
import { OWN_SHEET } from '../layout/find'
import { LOOKS } from '../marking/looks'
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
  readonly byNeed: readonly (WeekGroup & { readonly type: ExchangeType })[]
  readonly byFault: readonly (WeekGroup & { readonly fault: FaultId })[]
}

const CAUTION =
  'Groups and faults are prompts for your own judgement, never a verdict on a child. Personal data: keep as your school’s policy says.'

/** This week's page, to print: the groups, a next set for each, and the example to reteach (of the commonest fault, else need). */
export function planWeek({ className, date, byNeed, byFault }: Week): TableSheet {
  const title = [className, date].filter((part) => part !== '').join(', ')
  return {
    name: 'This week',
    rows: [
      [bold(`${OWN_SHEET}This week`)],
      [plain(title)],
      [plain('Please note'), plain(CAUTION)],
      [],
      [heading('Groups by need'), heading('')],
      ...(byNeed.length === 0
        ? [[plain(''), plain('No pupil needs support with a type, as far as the answers show.')]]
        : []),
      ...byNeed.flatMap((group, index) => [
        [bold(`Group ${index + 1}`), bold(group.type)],
        ...groupRows(group),
      ]),
      ...(byFault.length === 0 ? [] : [[], [heading('Groups by the same fault'), heading('')]]),
      ...byFault.flatMap((group) => [
        [bold('Likely fault'), bold(faultText(group.fault).sentence)],
        ...groupRows(group),
        [plain('What helps'), plain(faultText(group.fault).help)],
      ]),
      ...reteachRows(byFault[0] ?? byNeed[0]),
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

function faultText(id: FaultId): { readonly sentence: string; readonly help: string } {
  return FAULTS.find((fault) => fault.id === id) ?? { sentence: id, help: '' }
}
