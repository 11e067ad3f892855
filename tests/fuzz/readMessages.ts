import { readMessage } from '../../src/home/messages/readMessage'
import { generatorFrom } from '../../src/items/seed'
import { Chance } from './chance'
import { askedAs } from '../support/asked'
import { knownMessage, type KnownMessage } from './messages'

/** How messages were read: answers written, of the clear ones those found, and a sentence for each answer that the child did not give. */
export interface ReadMessages {
  readonly clear: number
  readonly found: number
  readonly wrong: readonly string[]
  /** Shares found by the way a message was made. */
  readonly byKind: ReadonlyMap<string, readonly [found: number, clear: number]>
}

const plain = (text: string) => text.replace(/[,£\s]/g, '').replace(/\.$/, '')

/** What was read of one message: of its clear answers those found, those missed, and what was read wrongly. */
export function readKnown({ text, questions, pupil, clear, unclear }: KnownMessage) {
  const read = readMessage(text, questions.map(askedAs), pupil)
  const found: number[] = []
  const wrong: string[] = []
  read.forEach((answer, index) => {
    if (answer.kind !== 'sure') return
    const truth = clear.get(index) ?? unclear.get(index)
    if (truth === undefined || plain(truth) !== plain(answer.typed))
      wrong.push(`Question ${index + 1} gets ${answer.typed}, said was ${truth ?? 'nothing'}.`)
    else if (clear.has(index)) found.push(index)
  })
  return { found, missed: [...clear.keys()].filter((index) => !found.includes(index)), wrong }
}

/** Reads so many messages made by chance; the same seed gives the same ones. */
export function readMessages(cases: number, seed: string | number): ReadMessages {
  const chance = new Chance(generatorFrom(`${seed} messages`))
  const wrong: string[] = []
  const byKind = new Map<string, [number, number]>()
  let [clear, found] = [0, 0]
  for (let index = 0; index < cases; index++) {
    const message = knownMessage(chance)
    const read = readKnown(message)
    const how = message.how.replace(/, of \d+$/, '')
    const [foundSo, clearSo] = byKind.get(how) ?? [0, 0]
    byKind.set(how, [foundSo + read.found.length, clearSo + message.clear.size])
    clear += message.clear.size
    found += read.found.length
    wrong.push(...read.wrong.map((why) => `${why} ${JSON.stringify(message.text)}`))
  }
  return { clear, found, wrong, byKind }
}
