import type { Chance } from './chance'

/**
 * Messages as children and parents send them, made knowing what they say. Nothing of the reader's is used: how such messages look is
 * written down here by itself (common practice, no source).
 */
export interface KnownMessage {
  readonly text: string
  readonly questions: readonly string[]
  readonly pupil: string
  /** What the child answered to a question, by its index, where the message says so clearly. */
  readonly clear: ReadonlyMap<number, string>
  /** Answers that may be written or left, by the index of their question: they are there, but not clearly. */
  readonly unclear: ReadonlyMap<number, string>
  /** How it was made, for the report. */
  readonly how: string
}

const NAMES = ['Ada', 'Ben', 'Cai', 'Dee', 'Eve', 'Flo', 'Gil', 'Hal', 'Ivy', 'Jem']
const GREETINGS = [
  'Hi Miss Day,',
  'Hello',
  'Dear Mr Hill,',
  'Good morning Mrs Reed',
  'Hi, here are my answers:',
  'Hi, this is homework 3 from week 7.',
  'Hello Miss, sorry this is late.',
  'Here are {name}’s answers for this week.',
  'Morning! Sent on 12 November at 16:30.',
  'Hi Sir its {name} from class 4K',
  'I did them all in 20 minutes!',
  'My maths homework 23/11/2026',
  'I am 9 and I like maths.',
  'We did this on Monday 23rd November after swimming at 4.30pm.',
  '',
]
const ENDINGS = [
  'Thanks, {name}',
  'Love {name} xx',
  'From {name} age 9',
  'Kind regards,\nSam ({name}’s mum)\n07700 900123',
  'I think I got 12/15 :)',
  'See you on Monday 30th November!',
  'Tel: 020 7946 0018',
  'It took me 25 minutes.',
  '{name}, Year 4',
  'Best wishes\nThe Hill family\n12 Mill Lane',
  'that was fun!!',
  'Sent from my phone',
  'I am 8 years old and 100% sure',
  'Have a nice weekend',
  'bye 👋',
  'PS my new book has 120 pages',
  '',
]
const QUOTES = [
  (old: string) =>
    `\nOn Mon, 23 Nov 2026 at 16:32, Miss Day <day@school.example> wrote:\n> Dear all,\n> ${old}\n> Miss Day`,
  (old: string) =>
    `\n-----Original Message-----\nFrom: Miss Day\nSent: 20 November 2026 15:01\nTo: Year 4\nSubject: homework 3\n\n${old}`,
  (old: string) => `\n> ${old}`,
]

interface Set {
  readonly texts: readonly string[]
  /** The question's calculation as a child types it, by index. */
  readonly sums: readonly (readonly [first: string, sign: '-' | '+', second: string])[]
  readonly right: readonly number[]
  readonly money: boolean
}

const pounds = (pence: number) => `${Math.floor(pence / 100)}.${String(pence % 100).padStart(2, '0')}`
const grouped = (value: number) => String(value).replace(/\B(?=(\d{3})+$)/g, ',')

function makeSet(chance: Chance): Set {
  const money = chance.onceIn(6)
  const most = chance.of([999, 999, 9999, 99999])
  const used = new Set<string>()
  const sums: [string, '-' | '+', string][] = []
  const right: number[] = []
  const texts: string[] = []
  const count = chance.whole(4, 14)
  while (texts.length < count) {
    const [one, other] = [chance.whole(101, most), chance.whole(12, most)]
    const [top, bottom] = [Math.max(one, other), Math.min(one, other)]
    if (used.has(`${top} ${bottom}`) || top === bottom) continue
    used.add(`${top} ${bottom}`)
    const sign = chance.onceIn(3) ? '+' : '-'
    const plain = (value: number) =>
      money ? pounds(value) : chance.onceIn(2) ? grouped(value) : String(value)
    const printed = (value: number) => (money ? `£${pounds(value)}` : grouped(value))
    texts.push(`${printed(top)} ${sign === '-' ? '−' : '+'} ${printed(bottom)}`)
    sums.push([plain(top), sign, plain(bottom)])
    right.push(sign === '-' ? top - bottom : top + bottom)
  }
  return { texts, sums, right, money }
}

/** What a child answers: mostly right, else what a common fault or a slip gives. */
function answered(chance: Chance, right: number): number {
  if (!chance.onceIn(4)) return right
  const wrong = right + chance.of([-1000, -110, -100, -90, -10, -1, 1, 9, 10, 90, 100, 1000])
  return wrong > 0 ? wrong : right + 10
}

function written(chance: Chance, value: number, money: boolean): string {
  if (money) return chance.onceIn(4) ? pounds(value) : `£${pounds(value)}`
  return value >= 1000 && chance.onceIn(3) ? grouped(value) : String(value)
}

interface Case {
  readonly index: number
  readonly answer: string
  readonly sum: string
  readonly name: string
}

const ORDINALS = [
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
  'eleventh',
  'twelfth',
  'thirteenth',
  'fourteenth',
]
const WORDS = [
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
]
const ending = (place: number) =>
  place % 10 === 1 && place !== 11
    ? 'st'
    : place % 10 === 2 && place !== 12
      ? 'nd'
      : place % 10 === 3 && place !== 13
        ? 'rd'
        : 'th'

type Style = readonly [name: string, joints: readonly string[], say: (each: Case) => string]

const LINES = ['\n']
const ANY = ['\n', ', ', ' ', '; ', '. ', '\n\n']
const CLOSED = ['\n', ', ', '; ', '. ']

/** Ways to give an answer to a question, and what may stand between two of them. */
const STYLES: readonly Style[] = [
  ['1) 475', ANY, ({ index, answer }) => `${index + 1}) ${answer}`],
  ['1)475', ['\n', ' ', ', '], ({ index, answer }) => `${index + 1})${answer}`],
  ['(1) 475', ANY, ({ index, answer }) => `(${index + 1}) ${answer}`],
  ['1. 475', ['\n', ', ', ' '], ({ index, answer }) => `${index + 1}. ${answer}`],
  ['1: 475', ['\n', ', ', ' '], ({ index, answer }) => `${index + 1}: ${answer}`],
  ['1 = 475', ['\n', ', '], ({ index, answer }) => `${index + 1} = ${answer}`],
  ['1- 475', LINES, ({ index, answer }) => `${index + 1} - ${answer}`],
  ['1 is 475', CLOSED, ({ index, answer }) => `${index + 1} is ${answer}`],
  ['q1. 475', ['\n', ', ', ' '], ({ index, answer }) => `q${index + 1}. ${answer}`],
  ['Q1 475', ['\n', ', ', ' '], ({ index, answer }) => `Q${index + 1} ${answer}`],
  ['Q1: 475', ANY, ({ index, answer }) => `Q${index + 1}: ${answer}`],
  ['Q1=475', ANY, ({ index, answer }) => `Q${index + 1}=${answer}`],
  ['Q 1 - 475', ANY, ({ index, answer }) => `Q ${index + 1} - ${answer}`],
  ['Q3 is 86', CLOSED, ({ index, answer }) => `Q${index + 1} is ${answer}`],
  ['qu 3 i got 86', ['\n', ', ', ' '], ({ index, answer }) => `qu ${index + 1} i got ${answer}`],
  ['Question 3: 86', ANY, ({ index, answer }) => `Question ${index + 1}: ${answer}`],
  ['question three is 86', CLOSED, ({ index, answer }) => `question ${WORDS[index] ?? ''} is ${answer}`],
  ['number 4 was 1,204', CLOSED, ({ index, answer }) => `number ${index + 1} was ${answer}`],
  ['For number 4 I got 1204', CLOSED, ({ index, answer }) => `For number ${index + 1} I got ${answer}`],
  ['On question 4 I put 1204', CLOSED, ({ index, answer }) => `On question ${index + 1} I put ${answer}`],
  [
    'My answer to question 4 is 12',
    CLOSED,
    ({ index, answer }) => `My answer to question ${index + 1} is ${answer}`,
  ],
  ['The answer to Q4 is 12', CLOSED, ({ index, answer }) => `The answer to Q${index + 1} is ${answer}`],
  ['I think no. 4 is 12', CLOSED, ({ index, answer }) => `I think no. ${index + 1} is ${answer}`],
  ['#4 12', ['\n', ', '], ({ index, answer }) => `#${index + 1} ${answer}`],
  ['Answer 4: 12', CLOSED, ({ index, answer }) => `Answer ${index + 1}: ${answer}`],
  ['for 4 I got 12', CLOSED, ({ index, answer }) => `for ${index + 1} I got ${answer}`],
  [
    'Ada got 12 for question 4',
    CLOSED,
    ({ index, answer, name }) => `${name} got ${answer} for question ${index + 1}`,
  ],
  ['For question 4 she got 12', CLOSED, ({ index, answer }) => `For question ${index + 1} she got ${answer}`],
  ['In Q4 Ada wrote 12', CLOSED, ({ index, answer, name }) => `In Q${index + 1} ${name} wrote ${answer}`],
  ['475 for q1', CLOSED, ({ index, answer }) => `${answer} for q${index + 1}`],
  [
    'I got 475 for number 1',
    ['\n', ', ', '. ', ' and '],
    ({ index, answer }) => `I got ${answer} for number ${index + 1}`,
  ],
  ['the third one is 86', CLOSED, ({ index, answer }) => `the ${ORDINALS[index] ?? ''} one is ${answer}`],
  [
    'the answer to the third question was 86',
    CLOSED,
    ({ index, answer }) => `the answer to the ${ORDINALS[index] ?? ''} question was ${answer}`,
  ],
  ['3rd: 86', CLOSED, ({ index, answer }) => `${index + 1}${ending(index + 1)}: ${answer}`],
  ['932-457=475', ['\n', ', ', ' ', '; '], ({ sum, answer }) => `${sum}=${answer}`],
  [
    '932 - 457 = 475',
    ['\n', ', ', ' ', '; '],
    ({ sum, answer }) => `${sum.replace(/[-+]/, ' $& ')} = ${answer}`,
  ],
  ['1) 932-457=475', ['\n', ', ', ' '], ({ index, sum, answer }) => `${index + 1}) ${sum}=${answer}`],
  [
    'Q1 932 - 457 = 475',
    ['\n', ', '],
    ({ index, sum, answer }) => `Q${index + 1} ${sum.replace(/[-+]/, ' $& ')} = ${answer}`,
  ],
  [
    'for 932 - 457 I got 475',
    CLOSED,
    ({ sum, answer }) => `for ${sum.replace(/[-+]/, ' $& ')} I got ${answer}`,
  ],
  [
    '932 take away 457 is 475',
    CLOSED,
    ({ sum, answer }) => `${sum.replace('-', ' take away ').replace('+', ' add ')} is ${answer}`,
  ],
  ['1)⏎475', LINES, ({ index, answer }) => `${index + 1})\n${answer}`],
  ['Q1⏎475', LINES, ({ index, answer }) => `Q${index + 1}\n${answer}`],
]

const AFTERWARDS = ['', '', '', '', ' (easy)', ' 👍', '!', ' because I exchanged']
const SKIPS: readonly ((label: number) => string)[] = [
  (label) => `I didn’t do ${label}`,
  (label) => `I couldn't do number ${label}`,
  (label) => `I skipped Q${label}.`,
  (label) => `Q${label} was too hard.`,
  (label) => `missed out question ${label}`,
]

/** What makes an answer unclear: the message says it and takes it back, doubts it, or says it of another child. */
const TRAPS: readonly ((label: number, answer: string, other: string) => string)[] = [
  (label, answer, other) => `Q${label} is ${other}. No wait, ${answer}`,
  (label, answer, other) => `Q${label} is ${answer} or ${other}`,
  (label, answer) => `maybe Q${label} is ${answer}?`,
  (label, answer, other) => `${label}) ${other} sorry ${answer}`,
  (label, answer, other) => `my friend got ${other} for Q${label} but I got ${answer}`,
  (label, answer, other) => `Q${label} is not ${other}, it is ${answer}`,
  (label, answer, other) => `Q${label} ${other} ${answer}`,
  (label, answer, other) => `first I got ${other} for number ${label} then I changed it to ${answer}`,
  (label, answer, other) => `Question ${label}: ${other}\nActually question ${label} is ${answer}`,
  (label, answer, other) => `${label}) ${other} → ${answer}`,
  (label, answer) => `I don't know if number ${label} is ${answer}`,
  (label, _answer, other) => `Is Q${label} ${other}?`,
  (label, _answer, other) => `my brother says ${label} is ${other}`,
]

/** Things with numbers that answer nothing, whatever the questions. */
const IDLE: readonly string[] = [
  'I did 3 of them in the car.',
  'We have 2 cats.',
  'My next lesson is at 10:15.',
  'Page 34 was hard.',
  'It is 5 days until my birthday!',
  'I got 9 out of 10 last time.',
  'Can you ring 01632 960123?',
  'I spent 40 minutes on it.',
  'My times tables score is 24/25.',
  'We are in room 12.',
  'Dad is 41 today.',
  'The trip costs £12.50.',
  'I am in Year 4.',
  'See you at 8.45am.',
]

/** A message in one of the styles or as a list in order, with what stands around it. */
export function knownMessage(chance: Chance): KnownMessage {
  const set = makeSet(chance)
  const name = chance.of(NAMES)
  const count = set.texts.length
  const answers = set.right.map((right) => written(chance, answered(chance, right), set.money))
  const clear = new Map<number, string>()
  const unclear = new Map<number, string>()
  const [body, how] = chance.onceIn(5)
    ? listed(chance, answers, clear)
    : said(chance, set, answers, name, clear, unclear)
  const lines = [
    chance.of(GREETINGS).replace('{name}', name),
    ...(chance.onceIn(4) ? [chance.of(IDLE)] : []),
    body,
    ...(chance.onceIn(4) ? [chance.of(IDLE)] : []),
    chance.of(ENDINGS).replace('{name}', name),
  ].filter((line) => line !== '')
  const old = set.texts.map((_, index) => `${index + 1}) ${chance.whole(10, 999)}`).join(' ')
  const quote = chance.onceIn(6) ? chance.of(QUOTES)(old) : ''
  const gap = chance.of(['\n', '\n', '\n\n'])
  return {
    text: lines.join(gap) + quote,
    questions: set.texts,
    pupil: `${name} ${chance.of(['K.', 'B.', 'M.'])}`,
    clear,
    unclear,
    how: `${how}, of ${count}`,
  }
}

function said(
  chance: Chance,
  set: Set,
  answers: readonly string[],
  name: string,
  clear: Map<number, string>,
  unclear: Map<number, string>,
): [string, string] {
  const [how, joints, say] = chance.of(STYLES)
  const joint = chance.of(joints)
  const parts: string[] = []
  const asides: string[] = []
  set.sums.forEach(([first, sign, second], index) => {
    const answer = answers[index] ?? ''
    if (chance.onceIn(12)) {
      if (chance.onceIn(2)) asides.push(chance.of(SKIPS)(index + 1))
      return
    }
    if (chance.onceIn(25)) {
      unclear.set(index, answer)
      asides.push(chance.of(TRAPS)(index + 1, answer, String(chance.whole(10, 999))))
      return
    }
    clear.set(index, answer)
    const after = joint.includes('\n') && !/⏎|-/.test(how) ? chance.of(AFTERWARDS) : ''
    parts.push(say({ index, answer, sum: `${first}${sign}${second}`, name }) + after)
  })
  if (clear.size < 3 && how === '1- 475') for (const [index, answer] of clear) unclear.set(index, answer)
  if (clear.size < 3 && how === '1- 475') clear.clear()
  if (how === '1- 475' && clear.size > 0 && !isRun([...clear.keys()])) {
    for (const [index, answer] of clear) unclear.set(index, answer)
    clear.clear()
  }
  return [[parts.join(joint) + (joint === '. ' ? '.' : ''), ...asides].join('\n'), how]
}

const isRun = (indices: readonly number[]) =>
  indices.every((index, at) => at === 0 || index === (indices[at - 1] ?? 0) + 1)

const LISTS: readonly ((chance: Chance, items: readonly string[]) => string)[] = [
  (_chance, items) => items.join('\n'),
  (_chance, items) => items.join(', '),
  (_chance, items) => `My answers are ${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}.`,
  (_chance, items) => `Answers: ${items.join('; ')}`,
  (_chance, items) => `In order: ${items.join(', ')}.`,
  (_chance, items) => items.map((item) => `${item},`).join('\n'),
  (chance, items) => items.map((item) => `${chance.of(['•', '*', '-'])} ${item}`).join('\n'),
]

/** Answers in the order of the questions; one too few or too many leaves all of them unclear. */
function listed(chance: Chance, answers: readonly string[], clear: Map<number, string>): [string, string] {
  const items = [...answers]
  const isOff = chance.onceIn(4)
  if (isOff && chance.onceIn(2)) items.push(String(chance.whole(10, 999)))
  else if (isOff) items.splice(chance.whole(0, items.length - 1), 1)
  if (!isOff) answers.forEach((answer, index) => clear.set(index, answer))
  const shown = items.map((item) => item.replace(/,/g, ''))
  return [chance.of(LISTS)(chance, shown), isOff ? 'a list of the wrong length' : 'a list in order']
}
