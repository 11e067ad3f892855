import { describe, expect, it } from 'vitest'
import type { CellValue } from '../../../src/answers/typed'
import { findMarksheets } from '../../../src/marksheet/layout/find'

const HEADER = ['Name', '321 − 185', '640 − 218']
const ADA = ['Ada B', 136, 422]
const BEN = ['Ben C', 264, 422]

/** The names of the children found when a row stands between others, under them, and right under the questions. */
function childrenWith(row: CellValue[]): string[][] {
  return [
    [HEADER, ADA, row, BEN],
    [HEADER, ADA, BEN, row],
    [HEADER, row, ADA, BEN],
  ].map((values) =>
    findMarksheets({ name: 'S', values }).flatMap(({ pupils }) => pupils.map(({ name }) => name)),
  )
}

describe('a child whose name looks like a label', () => {
  const names = [
    'Ada Common',
    'Mark S.',
    'Max T.',
    'Will A.',
    'Grace T.',
    'April M.',
    'Total B.',
    'Key L.',
    'Mean J.',
    'Sen K.',
    'Ans R.',
    'Mode R',
    'Rose Marks',
    'Ben Wrong',
    'Tom Target',
    'Q. Adams',
    'Alice Brown',
    'Jack Green',
    'Percy T',
    'Summer L',
    'Amber',
    'Ruby',
    'Pupil AAB',
    'Child XY',
    'Student 12',
    'May',
  ]
  it.each(names)('%s stays a child, with answers and without', (name) => {
    for (const row of [
      [name, 136, 422],
      [name, 264, null],
      [name, 145, 438],
    ])
      for (const found of childrenWith(row)) expect(found).toContain(name)
    expect(childrenWith([name, null, null])[0]).toContain(name)
  })

  it.each(['Max T.', 'Mark S.', 'Total B.'])('%s does with two small answers too', (name) => {
    for (const found of childrenWith([name, 20, 30])) expect(found).toContain(name)
  })
})

describe('a row that is nobody', () => {
  const labels = [
    'Common wrong answer',
    'Most common error',
    'Most frequent error',
    'Popular wrong answer',
    'Usual mistake',
    'Objective',
    'Year 4 objective',
    'NC ref',
    'Difficulty',
    'Topic',
    'Skill',
    'Type',
    'Exchange',
    'Last year',
    'Y4 last year',
    '2023-24',
    '2023',
    'Percentages',
    'Class %',
    'Average',
    'Mean',
    'Median',
    'Range',
    'Highest',
    'Lowest',
    'Mark scheme',
    'Max mark',
    'Marks available',
    'Possible',
    'Possible marks',
    'Pass mark',
    'Threshold',
    'Score',
    'Correct',
    'Number correct',
    'How many right',
    'Right',
    'Answers',
    'Answer',
    'Target',
    'Class target',
    'Out of',
    'out of',
    'Attempted',
    'Not attempted',
    'Blank',
    'Ticks',
    'Boys',
    'Girls',
    'PP',
    'Parallel class',
    'Other class',
    'School',
    'Benchmark',
    'Comparison',
    'Week 3',
    'Autumn term',
    'Re-teach',
    'Date',
    'Notes',
    'Question',
    'Q',
    'Marker',
    'Initials',
    'Checked',
    'Teacher assessment',
    'Mrs Day',
    'Wrens average',
    'Kestrel Total',
  ]
  it.each(labels)('%s is never a child, whatever stands in its row', (label) => {
    for (const row of [
      [label, 136, 422],
      [label, 264, 438],
      [label, 0.5, 0.7],
      [label, '50%', '70%'],
      [label, 3, 7],
      [label, 64, 87],
      [label, 120, 80],
      [label, 'tens', 'hundreds'],
      [label, '264', null],
      [label, null, null],
    ])
      for (const found of childrenWith(row)) expect(found, JSON.stringify(row)).toEqual(['Ada B', 'Ben C'])
  })
})
