import { counted, MONEY, WHOLE, type Template } from './template'

/** Stories in which both steps subtract. */
export const TAKING_AWAY: readonly Template[] = [
  {
    id: 'book-store',
    ...WHOLE,
    operations: ['subtract', 'subtract'],
    flow: 'onwards',
    limits: { first: [40, 5000], second: [5, 900], third: [5, 900], answer: [1, 4500] },
    labels: {
      first: 'Books at the start',
      second: 'Sent to the first',
      between: 'Left then',
      third: 'Sent to the second',
      answer: 'Left in the store',
    },
    tell: ({ first, second, third }) =>
      `There are ${first} books in a library store. The store sends ${second} books to one school and then ${third} books to another. How many books are left in the store?`,
    answer: (amount, isOne) => `${counted(amount, isOne, 'book is', 'books are')} left in the store.`,
  },
  {
    id: 'allotment-tank',
    ...WHOLE,
    operations: ['subtract', 'subtract'],
    flow: 'onwards',
    limits: { first: [50, 3000], second: [10, 1500], third: [10, 1500], answer: [2, 2500] },
    labels: {
      first: 'Litres in the tank',
      second: 'For the beans',
      between: 'Left after the beans',
      third: 'For the potatoes',
      answer: 'Left in the tank',
    },
    tell: ({ first, second, third, child }) =>
      `There are ${first} litres of rainwater in a tank. In one summer, ${child} uses ${second} litres for the beans and ${third} litres for the potatoes. It does not rain. How many litres are left in the tank?`,
    answer: (amount, isOne) => `${counted(amount, isOne, 'litre is', 'litres are')} left in the tank.`,
  },
  {
    id: 'ribbon-roll',
    ...WHOLE,
    operations: ['subtract', 'subtract'],
    flow: 'onwards',
    limits: { first: [60, 990], second: [10, 600], third: [10, 600], answer: [2, 900] },
    labels: {
      first: 'Whole roll',
      second: 'Cut for the banner',
      between: 'Left after the banner',
      third: 'Cut for the flags',
      answer: 'Left on the roll',
    },
    tell: ({ first, second, third, child }) =>
      `A roll of ribbon is ${first} cm long. ${child} cuts off ${second} cm for a banner and then ${third} cm for some flags. How many centimetres of ribbon are left on the roll?`,
    answer: (amount) => `There are ${amount} cm of ribbon left on the roll.`,
  },
  {
    id: 'sunflower-seeds',
    ...WHOLE,
    operations: ['subtract', 'subtract'],
    flow: 'taken-from',
    limits: { first: [30, 4000], second: [5, 900], third: [20, 4500], answer: [1, 1000] },
    isLikely: ({ first, second }) => 3 * second <= first,
    labels: {
      first: 'Seeds planted',
      second: 'Did not grow',
      between: 'Sunflowers grown',
      third: 'Sunflowers promised',
      answer: 'Still needed',
    },
    tell: ({ first, second, third }) =>
      `A flower farm plants ${first} sunflower seeds, but ${second} of them do not grow. Each of the others grows into one sunflower. The farm has promised ${third} sunflowers to its shops. How many more sunflowers does the farm need?`,
    answer: (amount, isOne) =>
      `The farm needs ${counted(amount, isOne, 'more sunflower', 'more sunflowers')}.`,
  },
  {
    id: 'car-park',
    ...WHOLE,
    operations: ['subtract', 'subtract'],
    flow: 'taken-from',
    limits: { first: [20, 3000], second: [5, 2000], third: [30, 4000], answer: [1, 3500] },
    labels: {
      first: 'Cars that drove in',
      second: 'Cars that left',
      between: 'Cars there at noon',
      third: 'All the spaces',
      answer: 'Free spaces',
    },
    tell: ({ first, second, third }) =>
      `A car park is empty when it opens. In the morning ${first} cars drive in, and by noon ${second} of these cars have left again. The car park has ${third} spaces. How many spaces are free at noon?`,
    answer: (amount, isOne) => `${counted(amount, isOne, 'space is', 'spaces are')} free at noon.`,
  },
  {
    id: 'puzzle-pieces',
    ...WHOLE,
    operations: ['subtract', 'subtract'],
    flow: 'onwards',
    limits: { first: [48, 2000], second: [5, 400], third: [5, 400], answer: [1, 1900] },
    labels: {
      first: 'All the pieces',
      second: 'Fitted on Friday',
      between: 'Left after Friday',
      third: 'Fitted on Saturday',
      answer: 'Still to fit',
    },
    tell: ({ first, second, third, child }) =>
      `A jigsaw has ${first} pieces. ${child} fits ${second} pieces together on Friday and another ${third} pieces on Saturday. How many pieces are still to be fitted?`,
    answer: (amount, isOne) => `${counted(amount, isOne, 'piece is', 'pieces are')} still to be fitted.`,
  },
  {
    id: 'summer-fair',
    ...MONEY,
    operations: ['subtract', 'subtract'],
    flow: 'onwards',
    limits: { first: [400, 4000], second: [60, 1500], third: [60, 1500], answer: [5, 3500] },
    labels: {
      first: 'Money at first',
      second: 'Spent on games',
      between: 'Left after the games',
      third: 'Spent on food',
      answer: 'Money left',
    },
    tell: ({ first, second, third, child }) =>
      `${child} takes ${first} to the summer fair, spends ${second} on games and then ${third} on food. How much money does ${child} have left?`,
    answer: (amount) => `${amount} is left.`,
  },
]
