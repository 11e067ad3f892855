import { counted, WHOLE, type Template } from './template'

/** Stories in which both steps add. */
export const JOINING: readonly Template[] = [
  {
    id: 'hill-walk',
    ...WHOLE,
    operations: ['add', 'add'],
    flow: 'onwards',
    limits: { first: [50, 5000], second: [50, 5000], third: [20, 4000], answer: [120, 13000] },
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
    limits: { first: [20, 9000], second: [5, 9000], third: [5, 9000], answer: [30, 25000] },
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
    limits: { first: [90, 900], second: [20, 300], third: [20, 300], answer: [150, 1500] },
    labels: {
      first: 'Weight at first',
      second: 'Gained in March',
      between: 'Weight after March',
      third: 'Gained in April',
      answer: 'Weight now',
    },
    tell: ({ first, second, third }) =>
      `At the start of March a kitten weighs ${first} g. It gains ${second} g in March and ${third} g in April. How many grams does the kitten weigh at the end of April?`,
    answer: (amount) => `The kitten weighs ${amount} g at the end of April.`,
  },
  {
    id: 'bread-rolls',
    ...WHOLE,
    operations: ['add', 'add'],
    flow: 'with-first',
    limits: { first: [20, 4000], second: [5, 3000], third: [0, 0], answer: [50, 12000] },
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
]
