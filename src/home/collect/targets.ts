import { foldText } from '../../arithmetic/numeral'
import {
  findMarksheets,
  type FoundPupil,
  type FoundQuestion,
  type Marksheet,
} from '../../marksheet/layout/find'
import type { Matrix } from '../../marksheet/layout/matrix'
import { shortName } from '../codes'
import { homeSetsOf } from '../fromMarksheet'

/** A pupil of a marksheet, whose answers may come in: the questions in the order of the pupil's answer cells, and the codes of the set. */
export interface Target {
  readonly matrix: Matrix
  readonly pupil: FoundPupil
  readonly questions: readonly FoundQuestion[]
  readonly set: string
  readonly child: string
}

/** The pupils of the marksheets of some sheets. */
export function targetsOf(
  sheets: readonly { readonly matrix: Matrix; readonly marksheets: readonly Marksheet[] }[],
): Target[] {
  return sheets.flatMap(({ matrix, marksheets }) =>
    marksheets.flatMap((marksheet) =>
      homeSetsOf(marksheet).map(({ pupil, set, child }) => ({
        matrix,
        pupil,
        questions: pupil.answers.flatMap(({ question }) => marksheet.questions[question] ?? []),
        set,
        child: child?.code ?? '',
      })),
    ),
  )
}

/** The pupils of the marksheets that are found on some sheets. */
export function targetsOn(sheets: readonly Matrix[]): Target[] {
  return targetsOf(sheets.map((matrix) => ({ matrix, marksheets: findMarksheets(matrix) })))
}

/** How well a name that was typed fits a pupil's: all of it or first name and initial; or only the first name. */
export function namesakes<Named extends Pick<Target, 'pupil'>>(
  name: string,
  targets: readonly Named[],
): { readonly sure: readonly Named[]; readonly likely: readonly Named[] } {
  const wanted = plainName(name)
  if (wanted === '') return { sure: [], likely: [] }
  const full = targets.filter(({ pupil }) => plainName(pupil.name) === wanted)
  const short = targets.filter(({ pupil }) => plainName(shortName(pupil.name)) === wanted)
  const first = targets.filter(({ pupil }) => plainName(shortName(pupil.name)).split(' ')[0] === wanted)
  return { sure: full.length > 0 ? full : wanted.includes(' ') ? short : [], likely: first }
}

/** A name without what differs from list to list: capitals, full stops, the order around a comma. */
function plainName(name: string): string {
  const [surname = '', given] = name.split(',')
  return foldText(given === undefined ? surname : `${given} ${surname}`)
    .replace(/[.’']/g, '')
    .trim()
}
