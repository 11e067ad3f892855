import type { ExchangeType } from '../arithmetic/exchange'
import type { Operation } from '../arithmetic/question'

/** One rung of the ladder from easy to hard: a heading in a teacher's words and an objective, one sentence for the class. */
export interface Rung {
  readonly name: string
  readonly objective: string
}

/** The rung of every exchange type. */
export const RUNGS: Readonly<Record<ExchangeType, Rung>> = {
  'no exchange': {
    name: 'No exchange',
    objective: 'I can line up the columns and subtract each one, starting on the right.',
  },
  'one exchange, hundredths to thousandths': oneExchange('hundredth', 'thousandths'),
  'one exchange, tenths to hundredths': oneExchange('tenth', 'hundredths'),
  'one exchange, ones to tenths': oneExchange('one', 'tenths'),
  'one exchange, tens to ones': oneExchange('ten', 'ones'),
  'one exchange, hundreds to tens': oneExchange('hundred', 'tens'),
  'one exchange, thousands to hundreds': oneExchange('thousand', 'hundreds'),
  'one exchange, ten thousands to thousands': oneExchange('ten thousand', 'thousands'),
  'one exchange, beyond ten thousands': {
    name: 'One exchange, beyond ten thousands',
    objective: 'I can exchange once, from the hundred thousands column or one further left.',
  },
  'two exchanges, apart': {
    name: 'Two exchanges, apart',
    objective:
      'I can exchange twice in one subtraction and check each column for whether it needs an exchange.',
  },
  'two exchanges, next to each other': {
    name: 'Two exchanges, next to each other',
    objective: 'I can exchange from a column and then exchange again for that same column.',
  },
  'three or more exchanges': {
    name: 'Three or more exchanges',
    objective: 'I can keep track of three or more exchanges in one subtraction.',
  },
  'through a zero': {
    name: 'Through a zero',
    objective: 'I can exchange through a zero by going to the next column that has something to give.',
  },
  'through two or more zeros': {
    name: 'Through two or more zeros',
    objective: 'I can exchange through two or more zeros, leaving a nine in each.',
  },
  'no carry': {
    name: 'No carry',
    objective: 'I can line up the columns and add each one, starting on the right.',
  },
  'one carry, thousandths to hundredths': oneCarry('thousandths', 'hundredth'),
  'one carry, hundredths to tenths': oneCarry('hundredths', 'tenth'),
  'one carry, tenths to ones': oneCarry('tenths', 'one'),
  'one carry, ones to tens': oneCarry('ones', 'ten'),
  'one carry, tens to hundreds': oneCarry('tens', 'hundred'),
  'one carry, hundreds to thousands': oneCarry('hundreds', 'thousand'),
  'one carry, thousands to ten thousands': oneCarry('thousands', 'ten thousand'),
  'one carry, beyond ten thousands': {
    name: 'One carry, beyond ten thousands',
    objective: 'I can carry once from the ten thousands column or one further left.',
  },
  'two carries, apart': {
    name: 'Two carries, apart',
    objective: 'I can carry twice in one addition and check each column for whether it makes ten or more.',
  },
  'two carries, next to each other': {
    name: 'Two carries, next to each other',
    objective: 'I can carry into a column and then carry out of that same column.',
  },
  'three or more carries': {
    name: 'Three or more carries',
    objective: 'I can keep track of three or more carries in one addition.',
  },
}

/** The last rung, on which no type is asked for. */
export const MIXED: Readonly<Record<Operation, Rung>> = {
  subtract: {
    name: 'Mixed subtractions',
    objective: 'I can decide for myself in each column whether an exchange is needed.',
  },
  add: {
    name: 'Mixed additions',
    objective: 'I can decide for myself in each column whether there is a ten to carry.',
  },
}

function oneExchange(from: string, to: string): Rung {
  return { name: `One exchange, ${from}s to ${to}`, objective: `I can exchange 1 ${from} for 10 ${to}.` }
}

function oneCarry(from: string, to: string): Rung {
  return { name: `One carry, ${from} to ${to}s`, objective: `I can carry 10 ${from} as 1 ${to}.` }
}
