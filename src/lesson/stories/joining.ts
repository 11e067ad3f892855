import { counted, MONEY, WHOLE, type Template } from './template'

/** Stories in which both steps add. */
export const JOINING: readonly Template[] = [
  {
    id: 'hill-walk',
    ...WHOLE,
    operations: ['add', 'add'],
    flow: 'onwards',
    limits: { first: [400, 5000], second: [400, 5000], third: [200, 4000], answer: [1000, 13000] },
    labels: {
      first: 'Before lunch',
      second: 'After lunch',
      between: 'By tea time',
      third: 'After tea',
      answer: 'The whole day',
    },
    tell: ({ first, second, third, child }) =>
      `On a day in the hills, ${child} walks ${first} metres before lunch, ${second} metres between lunch and tea, and ${third} metres after tea. How many metres does ${child} walk that day?`,
    answer: (amount) => `The whole walk is ${amount} metres.`,
  },
  {
    id: 'can-collection',
    ...WHOLE,
    operations: ['add', 'add'],
    flow: 'onwards',
    limits: { first: [20, 5000], second: [5, 5000], third: [5, 5000], answer: [30, 15000] },
    labels: {
      first: 'Cans in May',
      second: 'Cans in June',
      between: 'Cans by the end of June',
      third: 'Cans in July',
      answer: 'Cans altogether',
    },
    tell: ({ first, second, third }) =>
      `A school collects empty cans for recycling: ${first} cans in May, ${second} cans in June and ${third} cans in July. How many cans does the school collect in the three months altogether?`,
    answer: (amount) => `The school collects ${amount} cans altogether.`,
  },
  {
    id: 'growing-kitten',
    ...WHOLE,
    operations: ['add', 'add'],
    flow: 'onwards',
    limits: { first: [90, 950], second: [40, 250], third: [40, 250], answer: [170, 1450] },
    labels: {
      first: 'Weight at first',
      second: 'Gained in week 1',
      between: 'After week 1',
      third: 'Gained in week 2',
      answer: 'Weight now',
    },
    tell: ({ first, second, third }) =>
      `Two weeks ago, a kitten weighed ${first} g. It gained ${second} g in the first week and ${third} g in the second week. How many grams does the kitten weigh now?`,
    answer: (amount) => `The kitten weighs ${amount} g now.`,
  },
  {
    id: 'bread-rolls',
    ...WHOLE,
    operations: ['add', 'add'],
    flow: 'with-first',
    limits: { first: [20, 2000], second: [5, 1000], third: [0, 0], answer: [50, 5000] },
    isLikely: ({ first, second }) => second <= first,
    labels: {
      first: 'Rolls on Monday',
      second: 'More on Tuesday',
      between: 'Rolls on Tuesday',
      third: '',
      answer: 'Rolls on both days',
    },
    tell: ({ first, second }) =>
      `A bakery sells ${first} bread rolls on Monday. On Tuesday it sells ${second} more rolls than on Monday. How many rolls does the bakery sell on the two days altogether?`,
    answer: (amount) => `The bakery sells ${amount} rolls on the two days.`,
  },
  {
    id: 'bird-count',
    ...WHOLE,
    operations: ['add', 'add'],
    flow: 'onwards',
    limits: { first: [20, 6000], second: [5, 6000], third: [5, 6000], answer: [30, 18000] },
    labels: {
      first: 'Gulls',
      second: 'Geese',
      between: 'Gulls and geese',
      third: 'Ducks',
      answer: 'Birds counted',
    },
    tell: ({ first, second, third }) =>
      `Wardens count the birds on a lake. They count ${first} gulls, ${second} geese and ${third} ducks, and no other birds. How many birds do the wardens count altogether?`,
    answer: (amount, isOne) => `The wardens count ${counted(amount, isOne, 'bird', 'birds')} altogether.`,
  },
  {
    id: 'family-day-out',
    ...MONEY,
    operations: ['add', 'add'],
    flow: 'onwards',
    limits: { first: [250, 4500], second: [250, 4500], third: [250, 3500], answer: [800, 12000] },
    labels: {
      first: 'Travel',
      second: 'Lunch',
      between: 'Travel and lunch',
      third: 'Museum',
      answer: 'The day out',
    },
    tell: ({ first, second, third }) =>
      `On a day out, a family pays ${first} to travel there and back, ${second} for lunch and ${third} at the museum. How much does the family pay altogether?`,
    answer: (amount) => `The family pays ${amount} altogether.`,
  },
]
