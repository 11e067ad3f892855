import type { ExchangeType } from '../../arithmetic/exchange'
import { printQuestion } from '../../arithmetic/question'
import { RUNGS } from '../../items/rungs'
import type { WorkedQuestion } from '../../lesson/worked'
import type { Judgement } from '../../mastery/standing'
import { nextType, TEACHING_ORDER } from '../../mastery/support'
import { OWN_SHEET } from '../layout/find'
import { workAtType, type GroupWork } from './needs'
import type { SetWish } from '../setting/nextSet'
import type { TableCell, TableSheet } from '../marking/plan'

/** A type in the pupil's words, and its evidence. */
export interface Objective {
  readonly type: ExchangeType
  readonly objective: string
  readonly right: number
  readonly tried: number
}

/**
 * A pupil's own report. `can`: secure, and all right of two or more; `mostly`: secure, and more right than wrong. Then what comes next, an
 * example of it and questions to try. Nothing of any other pupil.
 */
export interface PupilReport {
  readonly name: string
  readonly can: readonly Objective[]
  readonly mostly: readonly Objective[]
  /** Whether enough was answered to judge any type at all. */
  readonly isSeen: boolean
  readonly next: { readonly type: ExchangeType; readonly objective: string; readonly work: GroupWork } | null
}

/** The report for a pupil; the wish is for what comes next. */
export function pupilReport(name: string, judgement: Judgement, wish: SetWish): PupilReport {
  const secure = TEACHING_ORDER.flatMap((type) =>
    judgement.byType
      .filter((standing) => standing.type === type && standing.status === 'secure')
      .map(({ right, tried }) => ({ type, objective: RUNGS[type].objective, right, tried })),
  )
  const type = nextType(judgement)
  const next = type === null ? null : { type, objective: RUNGS[type].objective, work: workAtType(type, wish) }
  const isSeen = judgement.byType.some(({ status }) => status !== 'not enough seen')
  return {
    name,
    can: secure.filter(({ right, tried }) => right === tried && tried >= 2),
    mostly: secure.filter(({ right, tried }) => right < tried && 2 * right > tried),
    isSeen,
    next,
  }
}

const STILL_LEARNING = 'This is still being learnt: what comes next is below.'
const TOO_FEW = 'Not enough answers yet to say what is secure.'

/** A sheet to print, and its rows (from 0) before which a new page begins. */
export interface PrintedSheet {
  readonly table: TableSheet
  readonly breaks: readonly number[]
}

/** Reports to print, a page for each pupil. `date` as it is to be read: "Friday 27 November". */
export function planReports(reports: readonly PupilReport[], date: string): PrintedSheet {
  const rows: TableCell[][] = [[bold(`${OWN_SHEET}Reports`)], []]
  const breaks: number[] = []
  reports.forEach((report, index) => {
    if (index > 0) breaks.push(rows.length)
    rows.push(...reportRows(report, date))
  })
  return { table: { name: 'Reports', rows, widths: [22, 74] }, breaks }
}

function reportRows({ name, can, mostly, isSeen, next }: PupilReport, date: string): TableCell[][] {
  const listed = (label: string, objectives: readonly Objective[], sign: string) =>
    objectives.map(({ objective, right, tried }, index) => [
      plain(index === 0 ? label : ''),
      plain(`${sign}${objective} (${right} of ${tried})`),
    ])
  const nothing = [[plain('I can do this'), plain(isSeen ? STILL_LEARNING : TOO_FEW)]]
  return [
    [bold(name), plain(date)],
    ...listed('I can do this', can, '✓ '),
    ...listed('Mostly right', mostly, ''),
    ...(can.length + mostly.length > 0 ? [] : nothing),
    [],
    ...(next === null
      ? [[bold('Next'), plain('Your teacher will tell you what comes next.')]]
      : nextRows(next.objective, next.work)),
    [],
  ]
}

function nextRows(objective: string, { example, questions, problem }: GroupWork): TableCell[][] {
  return [
    [bold('Next I learn'), bold(objective)],
    ...(example === null ? [] : exampleRows('An example', example)),
    [plain('Now try'), plain(problem ?? inLine(questions.map(printQuestion)))],
  ]
}

/** Rows that show an example with its steps in words, behind a label. */
export function exampleRows(label: string, { text, answer, steps }: WorkedQuestion): TableCell[][] {
  return [
    [bold(label), bold(`${unbroken(text)} = ${answer}`)],
    ...steps.map((say, index) => [plain(''), plain(`${index + 1}. ${say}`)]),
  ]
}

/** Questions in one cell, none broken over two lines. */
export function inLine(texts: readonly string[]): string {
  return texts.map((text, index) => `${index + 1})\u00a0${unbroken(text)}`).join('      ')
}

const unbroken = (text: string) => text.replaceAll(' ', '\u00a0')

/** A cell of bold text. */
export function bold(text: string, fill: string | null = null): TableCell {
  return { text, bold: true, fill }
}

/** A cell of plain text. */
export function plain(text: string): TableCell {
  return { text, bold: false, fill: null }
}
