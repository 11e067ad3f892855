import { addressOf, type Matrix } from '../layout/matrix'
import { areasOf } from './areas'
import { valueAt, type Review, type ReviewedPupil } from './review'
import { flagRules, nameText, type Rule } from './rules'

/**
 * The flags of a sheet: every name cell is looked at, so that a flag goes with its child when rows are sorted. A name that two children of the
 * sheet share would flag both, so that neither is flagged, and `told` says so.
 */
export function planFlags(
  matrix: Matrix,
  reviews: readonly Review[],
): { readonly rules: readonly Rule[]; readonly told: readonly string[] } {
  const counts = new Map<string, number>()
  const textOf = ({ nameCells }: ReviewedPupil) => nameText(nameCells.map((cell) => valueAt(matrix, cell)))
  const all = reviews.flatMap(({ pupils }) => pupils)
  for (const pupil of all) counts.set(textOf(pupil), (counts.get(textOf(pupil)) ?? 0) + 1)
  const isShared = (pupil: ReviewedPupil) => (counts.get(textOf(pupil)) ?? 0) > 1
  const shared = all.filter((pupil) => pupil.judgement.needsSupport && isShared(pupil))
  return {
    rules: reviews.flatMap((review) => rulesFor(review, textOf, isShared)),
    told: [...new Set(shared.map(({ name }) => name))].map(
      (name) =>
        `More than one pupil on ${matrix.name} is called ${name}, so that the name is not flagged: give them different names, or see Review.`,
    ),
  }
}

function rulesFor(
  { pupils, orientation }: Review,
  textOf: (pupil: ReviewedPupil) => string,
  isShared: (pupil: ReviewedPupil) => boolean,
): Rule[] {
  const names = pupils.filter((pupil) => pupil.judgement.needsSupport && !isShared(pupil)).map(textOf)
  if (names.length === 0) return []
  const areas = areasOf(pupils.flatMap(({ nameCells }) => nameCells.slice(0, 1)))
  const [first] = pupils
  const [one, other] = first?.nameCells ?? []
  const [top] = areas
  if (one === undefined || top === undefined) return []
  if (other === undefined) return flagRules(areas, [addressOf({ row: top.top, column: top.left })], names)
  const isAcross = orientation === 'pupils-across'
  const fixed = (row: number, column: number) =>
    addressOf({ row, column }).replace(/^([A-Z]+)(\d+)$/, isAcross ? '$1$$$2' : '$$$1$2')
  return areas.flatMap((area) => {
    const cells = isAcross
      ? [fixed(one.row, area.left), fixed(other.row, area.left)]
      : [fixed(area.top, one.column), fixed(area.top, other.column)]
    const second = isAcross
      ? { ...area, top: other.row, bottom: other.row }
      : { ...area, left: other.column, right: other.column }
    return [area, second].flatMap((each) => flagRules([each], cells, names))
  })
}
