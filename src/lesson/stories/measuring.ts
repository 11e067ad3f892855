import type { Template } from './template'

const KILOGRAMS = { unit: 'kg', places: 1 } as const
const METRES = { unit: 'm', places: 1 } as const
const LITRES = { unit: 'l', places: 1 } as const

/** Stories in kilograms, metres and litres with one decimal place; limits are in tenths. */
export const MEASURING: readonly Template[] = [
  {
    id: 'flour-sack',
    ...KILOGRAMS,
    operations: ['subtract', 'subtract'],
    flow: 'onwards',
    limits: { first: [60, 320], second: [12, 150], third: [12, 150], answer: [5, 250] },
    labels: {
      first: 'Full sack',
      second: 'Used on Monday',
      between: 'Left after Monday',
      third: 'Used on Tuesday',
      answer: 'Left in the sack',
    },
    tell: ({ first, second, third }) =>
      `A baker has a sack with ${first} of flour. She uses ${second} on Monday and ${third} on Tuesday. How many kilograms of flour are left in the sack?`,
    answer: (amount) => `There are ${amount} of flour left in the sack.`,
  },
  {
    id: 'three-parcels',
    ...KILOGRAMS,
    operations: ['add', 'add'],
    flow: 'onwards',
    limits: { first: [11, 95], second: [11, 95], third: [11, 95], answer: [40, 285] },
    labels: {
      first: 'Small parcel',
      second: 'Long parcel',
      between: 'These two',
      third: 'Tall parcel',
      answer: 'All three parcels',
    },
    tell: ({ first, second, third, child }) =>
      `${child} helps to weigh three parcels. The small one weighs ${first}, the long one ${second} and the tall one ${third}. How many kilograms do the three parcels weigh altogether?`,
    answer: (amount) => `The three parcels weigh ${amount}.`,
  },
  {
    id: 'market-apples',
    ...KILOGRAMS,
    operations: ['add', 'subtract'],
    flow: 'onwards',
    limits: { first: [50, 450], second: [50, 450], third: [30, 800], answer: [5, 500] },
    labels: {
      first: 'Picked on Friday',
      second: 'Picked on Saturday',
      between: 'Apples picked',
      third: 'Sold',
      answer: 'Apples left',
    },
    tell: ({ first, second, third }) =>
      `A farmer picks ${first} of apples on Friday and ${second} on Saturday. At the market he sells ${third} of them. How many kilograms of apples are left?`,
    answer: (amount) => `There are ${amount} of apples left.`,
  },
  {
    id: 'garden-fence',
    ...METRES,
    operations: ['add', 'subtract'],
    flow: 'taken-from',
    limits: { first: [12, 250], second: [12, 250], third: [60, 700], answer: [5, 400] },
    labels: {
      first: 'Built on Saturday',
      second: 'Built on Sunday',
      between: 'Built so far',
      third: 'The whole fence',
      answer: 'Still to build',
    },
    tell: ({ first, second, third, child }) =>
      `A fence is to be ${third} long. ${child} and a neighbour build ${first} of it on Saturday and ${second} on Sunday. How many metres of the fence are still to be built?`,
    answer: (amount) => `There are ${amount} of the fence still to be built.`,
  },
  {
    id: 'two-ribbons',
    ...METRES,
    operations: ['subtract', 'add'],
    flow: 'with-first',
    limits: { first: [15, 250], second: [3, 120], third: [0, 0], answer: [20, 480] },
    isLikely: ({ first, second }) => 3 * second <= 2 * first,
    labels: {
      first: 'Gold ribbon',
      second: 'Shorter by',
      between: 'Silver ribbon',
      third: '',
      answer: 'Both ribbons',
    },
    tell: ({ first, second }) =>
      `A gold ribbon is ${first} long. A silver ribbon is ${second} shorter than the gold ribbon. How many metres of ribbon are there altogether?`,
    answer: (amount) => `There are ${amount} of ribbon altogether.`,
  },
  {
    id: 'water-butt',
    ...LITRES,
    operations: ['subtract', 'add'],
    flow: 'onwards',
    limits: { first: [60, 950], second: [20, 450], third: [15, 400], answer: [40, 990] },
    labels: {
      first: 'Water at first',
      second: 'Used in the garden',
      between: 'Left after that',
      third: 'Rain',
      answer: 'Water now',
    },
    tell: ({ first, second, third, child }) =>
      `There are ${first} of rainwater in a water butt. ${child} uses ${second} in the garden. Overnight ${third} of rain run into the butt. How many litres of water are in it now?`,
    answer: (amount) => `There are ${amount} of water in the butt now.`,
  },
]
