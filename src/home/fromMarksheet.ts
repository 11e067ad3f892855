import type { FoundPupil, Marksheet } from '../marksheet/layout/find'
import { childCodes, setCode, shortName } from './codes'
import type { HomeChild, HomeQuestion, HomeSet } from './format'

/** A home workbook for one child; `set` is the code of its questions. */
export interface ChildsHome extends HomeSet {
  readonly child: HomeChild
  readonly set: string
}

/** A pupil of a marksheet with the home workbook that is theirs, its questions in the order of the pupil's answers. */
export interface PupilsHome extends ChildsHome {
  readonly pupil: FoundPupil
}

/** The home workbooks of a marksheet's pupils: the class's questions, or each pupil's own. */
export function homeSetsOf({ pupils, questions }: Pick<Marksheet, 'pupils' | 'questions'>): PupilsHome[] {
  const own = pupils.map((pupil) => pupil.answers.flatMap((answer) => questions[answer.question] ?? []))
  return namedSets(
    pupils.map(({ name }) => name),
    own,
  ).map((home, index) => ({ ...home, pupil: pupils[index] as FoundPupil }))
}

/** What the file of a child's home workbook is called: first name and initial, and the code. */
export function homeFileName({ name, code }: HomeChild): string {
  const plain = name.replace(code, '').replace(/[^\p{L}\p{M}\p{N} '’-]/gu, '')
  return `${`${plain.trim()} ${code}`.trim()}.xlsx`
}

/** A home workbook for each full name, with that child's questions. Where two have one short name, the code stands behind it. */
export function namedSets(
  names: readonly string[],
  questions: readonly (readonly HomeQuestion[])[],
): ChildsHome[] {
  const sets = questions.map((own) => setCode(own.map(({ question }) => question)))
  const short = names.map(shortName)
  const codesBySet = new Map([...new Set(sets)].map((set) => [set, childCodes(names, set)]))
  return names.map((_, index) => {
    const [set = '', own = '', asked = []] = [sets[index], short[index], questions[index]]
    const code = codesBySet.get(set)?.[index] ?? ''
    const isShared = own !== '' && short.filter((other) => other === own).length > 1
    return { set, child: { name: isShared ? `${own} (${code})` : own, code }, questions: asked }
  })
}
