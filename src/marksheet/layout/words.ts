/** Words of sums, keys, aims and shares that no name holds, so that a row whose label holds one is nobody's. */
const NEVER = wordsOf(`
  average averages avg ave median total totals subtotal percent percentage percentages facility score scores
  answer answers question questions calculation calculations objective objectives misconception misconceptions
  error errors mistake mistakes incorrect difficulty scheme predicted prediction forecast expected national cohort
  attempted attempts deviation feedback`)

/** Words that stand in labels, and in names too: a row is nobody's where its label holds no others. */
const LABEL = wordsOf(`
  mean mode range max maximum min minimum highest lowest best worst sum overall summary result results rank grade count tally rate std sd dev av
  mark marks marked marker marking point points tick ticks cross right wrong correct worth possible available pass threshold boundary
  benchmark comparison target key ans solution solutions model real example examples copy check checked initial initials
  common commonest frequent popular usual typical slip slips blank blanks absent ill left new number numbers no none
  lo walt wilf topic skill skills focus level strand method type types exchange exchanges carry aim goal step steps
  nc ref reference curriculum note notes comment comments remark remarks reason date dates day days q qu title
  week weeks month term half year years autumn spring summer january february march april may june july september october november december
  mon tue tues wed thu thur thurs fri monday tuesday wednesday thursday friday
  last previous prior next first second time test tests quiz paper assessment assessments baseline
  school class classes group groups set sets table tables section part room house team parallel other whole
  teacher teachers adult adults staff ta child children pupil pupils student students learner learners boy boys girl girls
  sen send eal pp fsm la ma ha wts exs gds wt ex gd lower middle higher upper ability able
  reteach teach revisit review again work maths mathematics column subtraction addition tens ones hundreds thousands zero zeros
  name names easy hard medium
  circle circles square squares triangle triangles rectangle rectangles pentagon pentagons hexagon hexagons octagon octagons`)

/** Colours head groups ("Red", "Blue group"), and end surnames. */
const COLOUR = wordsOf('red orange yellow green blue purple')

/** Small words of a label, which say nothing by themselves. */
const SMALL = wordsOf(
  'of the for in on at to and or out per by each as a an this that our all with how many most least not y yr',
)

/** Words of labels that are given names as well. */
const GIVEN = wordsOf('mark max will grace april may june summer autumn dev sen ma ha la ta')

/** Words that stand before or behind the name of a group: "Group B", "Kestrel class". */
const GROUP = wordsOf(
  'group set class year table tables part section week house team room ability question level stage paper test quiz version term day',
)

/** A pupil by a number or up to three letters. */
const ONE = /^(?:pupil|child|student|learner) (?:no\.? ?)?(?<code>[a-z]{0,3})\d{0,4}$/i
const TITLE = /^(?:mrs?|ms|miss|dr|sir)\b\.?/i
/** Nothing but signs and digits, with a % or a stroke, or a school year. */
const SIGNS = /^(?:\P{L}*[%/]\P{L}*|(?:19|20)\d\d\s*[-–/]\s*(?:\d\d){1,2})$/u

/**
 * What a label beside a row says: that the row is nobody's, that a person's name stands there, or neither for sure (`unsure`: a name such as
 * "Ada Common" holds a label's word, "Max" is both). Remarks in brackets behind a name say nothing of it.
 */
export function rowLabel(text: string): 'nobody' | 'person' | 'unsure' {
  if (TITLE.test(text) || SIGNS.test(text)) return 'nobody'
  const words = wordsIn(text.replace(/\(.*?\)/g, ' '))
  if (words.length === 0) return wordsIn(text).length === 0 ? 'person' : 'nobody'
  const [first = '', ...more] = words.map((word) => word.replace(/[^\p{L}\p{M}]/gu, '').toLowerCase())
  const all = [first, ...more]
  const code = ONE.exec(text)?.groups?.['code']
  if (
    (code !== undefined && !isOfLabels(code.toLowerCase())) ||
    (/^\p{L}+\.? \p{Lu}\.?$/u.test(text) && first.length > 1 && !GROUP.has(first))
  )
    return 'person'
  if (text.includes('%') || first === 'the' || all.some((word) => NEVER.has(word))) return 'nobody'
  const labelled = all.filter(
    (word, place) =>
      (LABEL.has(word) && (word.length > 1 || more.length === 0)) || (place === 0 && COLOUR.has(word)),
  )
  if (all.every((word) => SMALL.has(word))) return 'nobody'
  if (labelled.length === 0) return 'person'
  if (more.length === 0) return GIVEN.has(first) && /\p{Ll}/u.test(text) ? 'unsure' : 'nobody'
  if (all.every((word) => labelled.includes(word) || SMALL.has(word)) || GROUP.has(all.at(-1) ?? ''))
    return 'nobody'
  return labelled.includes(first) && !GIVEN.has(first) ? 'nobody' : 'unsure'
}

/** Whether a word of two letters or more is one of labels: a letter alone tells a pupil or a group from others. */
function isOfLabels(word: string): boolean {
  return word.length > 1 && [NEVER, LABEL, SMALL].some((words) => words.has(word))
}

function wordsIn(text: string): string[] {
  return text
    .replace(/[’']s\b/g, '')
    .split(/[^\p{L}\p{M}\d.’'-]+/u)
    .filter((word) => /\p{L}/u.test(word))
}

function wordsOf(list: string): ReadonlySet<string> {
  return new Set(list.trim().split(/\s+/))
}
