import type { FoundPupil, Marksheet } from '../marksheet/layout/find'
import { childCodes, setCode, shortName } from './codes'
import type { HomeQuestion, HomeSet } from './format'

/** A pupil of a marksheet with the home workbook that is theirs, its questions in the order of the pupil's answers. */
export interface PupilsHome extends HomeSet {
  readonly pupil: FoundPupil
  readonly set: string
}

/** The home workbooks of a marksheet's pupils: the class's questions, or each pupil's own. */
export function homeSetsOf({ pupils, questions }: Pick<Marksheet, 'pupils' | 'questions'>): PupilsHome[] {
  const own = pupils.map((pupil) => pupil.answers.flatMap((answer) => questions[answer.question] ?? []))
  return namedSets(
    pupils.map(({ name }) => name),
    own,
  ).map((home, index) => ({ ...home, pupil: pupils[index] as FoundPupil }))
}

/** A home workbook for each full name, with that child's questions. Where two have one short name, the code stands behind it. */
export function namedSets(
  names: readonly string[],
  questions: readonly (readonly HomeQuestion[])[],
): (HomeSet & { readonly set: string })[] {
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
