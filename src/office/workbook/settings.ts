import { NOTATION, type Notation } from '../../lesson/model/notation'
import { DEFAULT_MASTERY, settingsProblem, type MasterySettings } from '../../mastery/settings'
import { STATUSES } from '../../mastery/standing'
import { STATUS_WORDS, type StatusWords } from '../../mastery/support'
import { Problem } from '../edit/errors'

/** What a teacher can set, kept inside the workbook and nowhere else. */
export interface Settings {
  readonly mastery: MasterySettings
  /** Whether names are flagged and noted; off before a screen is shared. */
  readonly flags: boolean
  /** Whether marking writes the Mastery sheet too. */
  readonly masterySheet: boolean
  /** The class, as Record keeps it. */
  readonly className: string
  /** The most pupils in a group by need: a whole number from 1. */
  readonly groupSize: number
  /** What statuses are called, in the pane and on the sheets that are written. */
  readonly words: StatusWords
  /** How the school writes the column methods: in the pane, on sheets and in print. */
  readonly notation: Notation
}

export const DEFAULT_SETTINGS: Settings = {
  mastery: DEFAULT_MASTERY,
  flags: true,
  masterySheet: true,
  className: '',
  groupSize: 6,
  words: STATUS_WORDS,
  notation: NOTATION,
}

const KEY = 'columnwise'

/** Where the document's settings keep the lessons that were made; see lessons.ts. */
export const LESSONS_KEY = 'columnwise.lessons'

/** The workbook's settings; what is missing or makes no sense there is as in a new workbook. */
export function readSettings(): Settings {
  const kept: unknown = Office.context.document.settings.get(KEY)
  const { mastery, flags, masterySheet, className, groupSize, words, notation } = asRecord(kept)
  return {
    mastery: readMastery(mastery),
    flags: typeof flags === 'boolean' ? flags : DEFAULT_SETTINGS.flags,
    masterySheet: typeof masterySheet === 'boolean' ? masterySheet : DEFAULT_SETTINGS.masterySheet,
    className: typeof className === 'string' ? className : DEFAULT_SETTINGS.className,
    groupSize: isSize(groupSize) ? groupSize : DEFAULT_SETTINGS.groupSize,
    words: readWords(words),
    notation: readNotation(notation),
  }
}

/** The most letters of a word for a status: a column of the Mastery sheet must hold it. */
export const LONGEST_WORD = 20

function readWords(kept: unknown): StatusWords {
  const record = asRecord(kept)
  const wordOf = (status: keyof StatusWords) => {
    const word = record[status]
    return typeof word === 'string' && word.trim() !== ''
      ? word.trim().slice(0, LONGEST_WORD)
      : STATUS_WORDS[status]
  }
  return Object.fromEntries(STATUSES.map((status) => [status, wordOf(status)])) as StatusWords
}

function readNotation(kept: unknown): Notation {
  const { exchange, carry } = asRecord(kept)
  return {
    exchange: exchange === 'beside' || exchange === 'above' ? exchange : NOTATION.exchange,
    carry: carry === 'above' || carry === 'below' ? carry : NOTATION.carry,
  }
}

function isSize(value: unknown): value is number {
  return Number.isSafeInteger(value) && Number(value) >= 1
}

function asRecord(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {}
}

function readMastery(kept: unknown): MasterySettings {
  const record = asRecord(kept)
  // Version 0.1 kept rates of another model, told by a threshold of that name.
  if ('nearlySecure' in record) return DEFAULT_MASTERY
  const names = Object.keys(DEFAULT_MASTERY) as (keyof MasterySettings)[]
  const merged = Object.fromEntries(
    names.map((name) => [name, typeof record[name] === 'number' ? record[name] : DEFAULT_MASTERY[name]]),
  ) as unknown as MasterySettings
  return settingsProblem(merged) === null ? merged : DEFAULT_MASTERY
}

const listeners = new Set<(settings: Settings) => void>()

/** Calls the listener with the workbook's settings whenever they are kept, until the function given back is called. */
export function watchSettings(listener: (settings: Settings) => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** Keeps settings in the workbook, those not given as they are. They are saved with it. Throws Problem where they make no sense. */
export async function keepSettings(changed: Partial<Settings>): Promise<Settings> {
  const settings = { ...readSettings(), ...changed }
  const problem = settingsProblem(settings.mastery)
  if (problem !== null) throw new Problem(problem, 'Correct it and try again.')
  Office.context.document.settings.set(KEY, settings)
  await saveSettings()
  for (const listener of listeners) listener(settings)
  return settings
}

/** Takes the settings and the list of lessons out of the workbook, which then is as a new one. Throws Problem. */
export async function removeSettings(): Promise<void> {
  Office.context.document.settings.remove(KEY)
  Office.context.document.settings.remove(LESSONS_KEY)
  await saveSettings()
  for (const listener of listeners) listener(DEFAULT_SETTINGS)
}

/** Whether the workbook holds settings or lessons. */
export function hasSettings(): boolean {
  const { settings } = Office.context.document
  return [KEY, LESSONS_KEY].some((key) => (settings.get(key) ?? null) !== null)
}

/** Saves the document's settings. Throws Problem. */
export function saveSettings(): Promise<void> {
  return new Promise((resolve, reject) => {
    Office.context.document.settings.saveAsync(({ status }) => {
      if (status === Office.AsyncResultStatus.Succeeded) resolve()
      else
        reject(
          new Problem(
            'The settings could not be kept in this workbook.',
            'Save the workbook under a new name, then try again.',
          ),
        )
    })
  })
}
