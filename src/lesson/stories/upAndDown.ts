import { counted, MONEY, WHOLE, type Template } from './template'

/** Stories in which the first step subtracts and the second adds. */
export const UP_AGAIN: readonly Template[] = [
  {
    id: 'kitchen-potatoes',
    ...WHOLE,
    operations: ['subtract', 'add'],
    flow: 'onwards',
    limits: { first: [50, 950], second: [20, 600], third: [20, 900], answer: [30, 1500] },
    labels: {
      first: 'Potatoes at first',
      second: 'Used for lunch',
      between: 'Left after lunch',
      third: 'Delivered',
      answer: 'Potatoes now',
    },
    tell: ({ first, second, third }) =>
      `A school kitchen has ${first} potatoes. The cooks use ${second} potatoes for lunch. After lunch, ${third} potatoes are delivered. How many potatoes does the kitchen have now?`,
    answer: (amount) => `The kitchen has ${amount} potatoes now.`,
  },
  {
    id: 'savings-account',
    ...MONEY,
    operations: ['subtract', 'add'],
    flow: 'onwards',
    limits: { first: [500, 9900], second: [100, 4000], third: [100, 5000], answer: [200, 15000] },
    labels: {
      first: 'Savings at first',
      second: 'Taken out',
      between: 'Left after that',
      third: 'Paid in',
      answer: 'Savings now',
    },
    tell: ({ first, second, third, child }) =>
      `${child} has ${first} in a savings account. ${child} takes out ${second} to buy a present and later pays in ${third}. How much money is in the account now?`,
    answer: (amount) => `There is ${amount} in the account now.`,
  },
  {
    id: 'woodland-trees',
    ...WHOLE,
    operations: ['subtract', 'add'],
    flow: 'onwards',
    limits: { first: [60, 9000], second: [5, 3000], third: [10, 4000], answer: [50, 12000] },
    isLikely: ({ first, second, third }) => 4 * second <= first && third <= first,
    labels: {
      first: 'Trees at first',
      second: 'Blown down',
      between: 'Standing after the storm',
      third: 'Planted',
      answer: 'Standing now',
    },
    tell: ({ first, second, third }) =>
      `There are ${first} trees standing in a wood. A storm blows down ${second} of them. In spring, volunteers plant ${third} new trees in the wood. How many trees are standing in the wood now?`,
    answer: (amount) => `${amount} trees are standing in the wood now.`,
  },
  {
    id: 'balloon-height',
    ...WHOLE,
    operations: ['subtract', 'add'],
    flow: 'onwards',
    limits: { first: [80, 2500], second: [20, 1500], third: [20, 1500], answer: [50, 3000] },
    labels: {
      first: 'Height at first',
      second: 'Sinks',
      between: 'Height after sinking',
      third: 'Rises',
      answer: 'Height now',
    },
    tell: ({ first, second, third }) =>
      `A hot-air balloon is ${first} metres above the ground. It sinks ${second} metres and then rises ${third} metres. How many metres above the ground is the balloon now?`,
    answer: (amount) => `The balloon is ${amount} metres above the ground now.`,
  },
  {
    id: 'aquarium-weekend',
    ...WHOLE,
    operations: ['subtract', 'add'],
    flow: 'with-first',
    limits: { first: [60, 5000], second: [10, 3000], third: [0, 0], answer: [70, 9500] },
    isLikely: ({ first, second }) => 3 * second <= 2 * first,
    labels: {
      first: 'People on Saturday',
      second: 'Fewer on Sunday',
      between: 'People on Sunday',
      third: '',
      answer: 'People on both days',
    },
    tell: ({ first, second }) =>
      `On Saturday, ${first} people visit an aquarium. On Sunday, ${second} fewer people visit it than on Saturday. How many people visit the aquarium on the two days altogether?`,
    answer: (amount) => `${amount} people visit the aquarium on the two days.`,
  },
  {
    id: 'two-ropes',
    ...WHOLE,
    operations: ['subtract', 'add'],
    flow: 'with-first',
    limits: { first: [60, 550], second: [10, 400], third: [0, 0], answer: [70, 990] },
    isLikely: ({ first, second }) => 4 * second <= 3 * first,
    labels: {
      first: 'Blue rope',
      second: 'Shorter by',
      between: 'Red rope',
      third: '',
      answer: 'Both ropes',
    },
    tell: ({ first, second }) =>
      `A blue rope is ${first} cm long. A red rope is ${second} cm shorter than the blue rope. How many centimetres of rope are there altogether?`,
    answer: (amount) => `There are ${amount} cm of rope altogether.`,
  },
]

/** Stories in which the first step adds and the second subtracts from what that made. */
export const DOWN_AGAIN: readonly Template[] = [
  {
    id: 'castle-visitors',
    ...WHOLE,
    operations: ['add', 'subtract'],
    flow: 'onwards',
    limits: { first: [20, 6000], second: [20, 6000], third: [10, 8000], answer: [5, 9000] },
    isLikely: ({ between, third }) => 4 * third <= 3 * between,
    labels: {
      first: 'In the morning',
      second: 'In the afternoon',
      between: 'All the visitors',
      third: 'Children',
      answer: 'Adults',
    },
    tell: ({ first, second, third }) =>
      `A castle has ${first} visitors in the morning and ${second} other visitors in the afternoon. Of all these visitors, ${third} are children and the rest are adults. How many of the visitors are adults?`,
    answer: (amount) => `${amount} of the visitors are adults.`,
  },
  {
    id: 'farm-eggs',
    ...WHOLE,
    operations: ['add', 'subtract'],
    flow: 'onwards',
    limits: { first: [20, 3000], second: [20, 3000], third: [10, 5000], answer: [1, 5000] },
    labels: {
      first: 'Eggs on Monday',
      second: 'Eggs on Tuesday',
      between: 'Eggs collected',
      third: 'Eggs sold',
      answer: 'Eggs not sold',
    },
    tell: ({ first, second, third }) =>
      `A farmer collects ${first} eggs on Monday and ${second} eggs on Tuesday. The farm shop sells ${third} of these eggs. How many of the eggs are not sold?`,
    answer: (amount, isOne) => `${counted(amount, isOne, 'egg is', 'eggs are')} not sold.`,
  },
  {
    id: 'island-ferry',
    ...WHOLE,
    operations: ['add', 'subtract'],
    flow: 'onwards',
    limits: { first: [20, 1800], second: [5, 900], third: [5, 1500], answer: [1, 2000] },
    labels: {
      first: 'On board at first',
      second: 'Get on',
      between: 'On board then',
      third: 'Get off',
      answer: 'On board now',
    },
    tell: ({ first, second, third }) =>
      `A ferry sets off with ${first} passengers. At the first island, ${second} more passengers get on and nobody gets off. At the second island, ${third} passengers get off and nobody gets on. How many passengers are on the ferry now?`,
    answer: (amount, isOne) =>
      `${counted(amount, isOne, 'passenger is', 'passengers are')} on the ferry now.`,
  },
  {
    id: 'bead-tin',
    ...WHOLE,
    operations: ['add', 'subtract'],
    flow: 'onwards',
    limits: { first: [20, 4000], second: [10, 3000], third: [10, 6000], answer: [1, 6000] },
    labels: {
      first: 'Beads at first',
      second: 'New beads',
      between: 'Beads then',
      third: 'Used',
      answer: 'Beads now',
    },
    tell: ({ first, second, third, child }) =>
      `There are ${first} beads in a tin. ${child} tips in a packet of ${second} beads and then takes out ${third} beads to make necklaces. How many beads are in the tin now?`,
    answer: (amount, isOne) => `${counted(amount, isOne, 'bead is', 'beads are')} in the tin now.`,
  },
  {
    id: 'treasure-game',
    ...WHOLE,
    operations: ['add', 'subtract'],
    flow: 'onwards',
    limits: { first: [20, 8000], second: [10, 5000], third: [10, 8000], answer: [1, 12000] },
    labels: {
      first: 'Points at first',
      second: 'Won',
      between: 'Points then',
      third: 'Lost',
      answer: 'Points now',
    },
    tell: ({ first, second, third, child }) =>
      `${child} has ${first} points in a game. ${child} finds a treasure and wins ${second} points, then falls into a swamp and loses ${third} points. How many points does ${child} have now?`,
    answer: (amount, isOne) => `The score is now ${counted(amount, isOne, 'point', 'points')}.`,
  },
]

/** Stories in which the first step adds and the second takes what that made from a whole. */
export const UP_TO_A_WHOLE: readonly Template[] = [
  {
    id: 'sports-ground',
    ...WHOLE,
    operations: ['add', 'subtract'],
    flow: 'taken-from',
    limits: { first: [10, 5000], second: [10, 4000], third: [40, 9000], answer: [1, 8000] },
    labels: {
      first: 'Adult tickets',
      second: 'Child tickets',
      between: 'Tickets sold',
      third: 'All the seats',
      answer: 'Seats not sold',
    },
    tell: ({ first, second, third }) =>
      `A sports ground has ${third} seats, and each ticket is for one seat. So far ${first} adult tickets and ${second} child tickets have been sold. How many seats are not sold yet?`,
    answer: (amount, isOne) => `${counted(amount, isOne, 'seat is', 'seats are')} not sold yet.`,
  },
  {
    id: 'torch-and-map',
    ...MONEY,
    operations: ['add', 'subtract'],
    flow: 'taken-from',
    limits: { first: [150, 1600], second: [100, 900], third: [500, 5000], answer: [5, 4500] },
    labels: {
      first: 'Torch',
      second: 'Map',
      between: 'Torch and map',
      third: 'Money to spend',
      answer: 'Money left',
    },
    tell: ({ first, second, third, child }) =>
      `${child} has ${third} to spend. A torch costs ${first} and a map costs ${second}. ${child} buys one torch and one map. How much money does ${child} have left?`,
    answer: (amount) => `${amount} is left.`,
  },
  {
    id: 'playground-fund',
    unit: '£',
    places: 0,
    operations: ['add', 'subtract'],
    flow: 'taken-from',
    limits: { first: [20, 2000], second: [20, 2000], third: [80, 5000], answer: [1, 4500] },
    labels: {
      first: 'Year 3 raises',
      second: 'Year 4 raises',
      between: 'Raised so far',
      third: 'Cost of the equipment',
      answer: 'Still needed',
    },
    tell: ({ first, second, third }) =>
      `New playground equipment costs ${third}. Year 3 raises ${first} and Year 4 raises ${second}. How much money is still needed to pay for the equipment?`,
    answer: (amount) => `${amount} is still needed.`,
  },
  {
    id: 'cycle-route',
    ...WHOLE,
    operations: ['add', 'subtract'],
    flow: 'taken-from',
    limits: { first: [10, 700], second: [10, 700], third: [40, 2500], answer: [2, 2000] },
    labels: {
      first: 'First week',
      second: 'Second week',
      between: 'Ridden so far',
      third: 'The whole route',
      answer: 'Still to ride',
    },
    tell: ({ first, second, third }) =>
      `A cycling club is riding a route of ${third} km. The club rides ${first} km in the first week and ${second} km in the second week. How many kilometres of the route are still to be ridden?`,
    answer: (amount) => `There are ${amount} km of the route still to be ridden.`,
  },
  {
    id: 'fruit-punch',
    ...WHOLE,
    operations: ['add', 'subtract'],
    flow: 'taken-from',
    limits: { first: [100, 3000], second: [100, 3000], third: [600, 6000], answer: [50, 4000] },
    labels: {
      first: 'Apple juice',
      second: 'Orange juice',
      between: 'Juice so far',
      third: 'The full bowl',
      answer: 'Water added',
    },
    tell: ({ first, second, third, child }) =>
      `A punch bowl holds ${third} ml when it is full. ${child} pours ${first} ml of apple juice and ${second} ml of orange juice into the empty bowl and then fills it up with water. How many millilitres of water does ${child} add?`,
    answer: (amount) => `${amount} ml of water is added.`,
  },
]
