import type { Block, Handout, Making, Sheet } from '../handout'
import type { Lesson } from '../lessonSet'
import {
  answerSheet,
  exampleSheet,
  exitTicket,
  homeLetter,
  practiceSheets,
  togetherSheet,
} from '../lessonSheets'
import { barPieces, gridPieces, trianglePieces } from './drawings'
import { fieldsPiece, roomPieces, stagePieces, textPiece, workedPiece, workingPieces } from './figures'
import { COLUMNS, lineHeight, PAGE_HEIGHT, SIZES, type Sizes } from './paper'
import { beside, cell, gap, moved, stacked, type CellText, type Look, type Piece } from './piece'

/**
 * Sheets of a hand-out as cells, from row and column 0 on: texts, looks (a later one is laid over an earlier), the heights of all rows in
 * points, and the rows before which a new page begins.
 */
export interface PrintedCells {
  readonly texts: readonly CellText[]
  readonly looks: readonly Look[]
  readonly heights: readonly number[]
  readonly breaks: readonly number[]
}

/** A worksheet of a hand-out: what it is to be called, the set number ('' for none), and the sheets on it. */
export interface Worksheet {
  readonly name: string
  readonly set: string
  readonly sheets: readonly Sheet[]
}

/** The longest name of a sheet in Excel, in characters, and the signs that it may not hold. */
const LONGEST = 31
const FORBIDDEN = /[:\\/?*[\]']/g
const ANSWERS = ' answers'

/** A hand-out's worksheets: the pupils' sheets under its title, those for adults under the same with "answers". */
export function worksheetsOf({ title, set, sheets }: Handout): Worksheet[] {
  const name = shortened(title.replace(FORBIDDEN, ''), LONGEST - ANSWERS.length)
  const named = [
    { name, set, sheets: sheets.filter(({ reader }) => reader === 'pupil') },
    { name: `${name}${ANSWERS}`, set, sheets: sheets.filter(({ reader }) => reader === 'adult') },
  ]
  return named.filter((each) => each.sheets.length > 0)
}

/** A lesson's worksheets: everything for the pupils, the answers with their working, the letter home. */
export function lessonWorksheets(lesson: Lesson, { notation, set }: Making): Worksheet[] {
  const forPupils = [
    exampleSheet(lesson, notation),
    togetherSheet(lesson),
    ...practiceSheets(lesson, notation),
    exitTicket(lesson),
  ]
  return [
    { name: 'Lesson', set, sheets: forPupils },
    { name: 'Lesson answers', set, sheets: [answerSheet(lesson, notation)] },
    { name: 'Lesson letter', set, sheets: [homeLetter(lesson, notation)] },
  ]
}

/** As many of a title's first words as fit. */
function shortened(title: string, longest: number): string {
  if (title.length <= longest) return title
  return title
    .slice(0, longest + 1)
    .replace(/\s+\S*$/, '')
    .replace(/ and$/, '')
    .slice(0, longest)
}

/**
 * Lays sheets out in cells. Each begins on a new page; what does not fit on a page goes to the next with the heading over it, so that no
 * question, working or drawing is torn apart.
 */
export function printedCells({ set, sheets }: Omit<Worksheet, 'name'>): PrintedCells {
  const placed: Piece[] = []
  const breaks: number[] = []
  let row = 0
  for (const sheet of sheets) {
    let left = 0
    for (const group of groupsOf(sheetPieces(sheet, sheet.set ?? set))) {
      const piece = stacked(group)
      const height = sum(piece.heights)
      if (height > left) {
        if (row > 0) breaks.push(row)
        left = PAGE_HEIGHT
      }
      left -= height
      placed.push(moved(piece, row, 0))
      row += piece.heights.length
    }
  }
  const { heights, texts, looks } = {
    heights: placed.flatMap((piece) => piece.heights),
    texts: placed.flatMap((piece) => piece.texts),
    looks: placed.flatMap((piece) => piece.looks),
  }
  return { heights, texts, looks, breaks }
}

/** The pieces that stay on one page: one that leads with what follows it. */
function groupsOf(pieces: readonly Piece[]): Piece[][] {
  const groups: Piece[][] = []
  for (const [index, piece] of pieces.entries()) {
    if (pieces[index - 1]?.leads === true) groups.at(-1)?.push(piece)
    else groups.push([piece])
  }
  return groups
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0)
}

function sheetPieces({ title, reader, blocks }: Sheet, set: string): Piece[] {
  const sizes = SIZES[reader]
  const pieces = blocks.flatMap((block) => blockPieces(block, reader, sizes, set))
  if (title === '')
    return blocks.some(({ kind }) => kind === 'halves') ? pieces : [...numbered(set, sizes), ...pieces]
  const below = set === '' ? [gap(6)] : numbered(set, sizes)
  const head = stacked([textPiece(title, sizes.title, { bold: true }), ...below])
  return [{ ...head, leads: true }, ...pieces]
}

/** The set number, small, at the right; nothing where there is none. */
function numbered(set: string, { small: size }: Sizes): Piece[] {
  if (set === '') return []
  return [
    {
      heights: [lineHeight(size)],
      texts: [{ row: 0, column: COLUMNS - 1, text: `Set ${set}` }],
      looks: [{ cells: cell(0, COLUMNS - 1), size, align: 'right' }],
      leads: true,
    },
  ]
}

function blockPieces(block: Block, reader: Sheet['reader'], sizes: Sizes, set: string): Piece[] {
  switch (block.kind) {
    case 'heading':
      return [
        {
          ...stacked([gap(6), textPiece(block.text, sizes.heading, { bold: true }), gap(3)]),
          leads: true,
        },
      ]
    case 'text':
      return [stacked([textPiece(block.text, sizes.text), gap(4)])]
    case 'fields':
      return [stacked([fieldsPiece(block.names, sizes.text), gap(8)])]
    case 'list':
      return block.items.map((item) => listed(item, '•', sizes.text))
    case 'ticks':
      return joined([...block.items.map((item) => ticked(item, sizes.text)), gap(6)])
    case 'rooms':
      return roomPieces(block.rooms, sizes, block.across)
    case 'worked':
      return [workedPiece(block.working)]
    case 'stages':
      return stagePieces(block.stages, sizes)
    case 'workings':
      return workingPieces(block.workings, sizes)
    case 'grid':
      return [{ ...gap(8), leads: true }, ...gridPieces(block.rows, reader, sizes)]
    case 'triangles':
      return trianglePieces(block.triangles, sizes)
    case 'bars':
      return barPieces(block.bars, block.shown, sizes)
    case 'together':
      return joined(block.blocks.flatMap((each) => blockPieces(each, reader, sizes, set)))
    case 'halves':
      return block.halves.flatMap((half, index) =>
        halfPieces(
          [...numbered(set, sizes), ...half.flatMap((each) => blockPieces(each, reader, sizes, set))],
          index < block.halves.length - 1,
        ),
      )
  }
}

/** Half of a page in points, less the cut between two, and that. */
const HALF_PAGE = PAGE_HEIGHT / 2 - 16
const CUT = 14

/** Half a page, with a line to cut along below it where another half follows. What is higher stands as it is. */
function halfPieces(pieces: readonly Piece[], isCut: boolean): Piece[] {
  const one = stacked(pieces)
  const height = sum(one.heights)
  if (height > HALF_PAGE) return [...pieces]
  const cut: Piece = {
    heights: [CUT],
    texts: [],
    looks: [{ cells: { top: 0, left: 0, bottom: 0, right: COLUMNS - 1 }, lines: 'under' }],
  }
  return [stacked([one, gap(HALF_PAGE - height), ...(isCut ? [cut, gap(CUT)] : [])])]
}

/** What a title of two lines takes, in points. */
const TITLE_ROOM = 70

/** Pieces as one, where a page has room for them all under a title. */
function joined(pieces: readonly Piece[]): Piece[] {
  const one = stacked(pieces)
  return sum(one.heights) <= PAGE_HEIGHT - TITLE_ROOM ? [one] : [...pieces]
}

function listed(text: string, sign: string, size: number): Piece {
  const mark: Piece = {
    heights: [],
    texts: [{ row: 0, column: 0, text: sign }],
    looks: [{ cells: cell(0, 0), size, align: 'centre' }],
  }
  return beside([
    [0, mark],
    [0, textPiece(text, size, { from: 1 })],
  ])
}

/** Texts a little away from the line on their left. */
function apart(piece: Piece): Piece {
  return { ...piece, texts: piece.texts.map((each) => ({ ...each, text: ` ${each.text}` })) }
}

/** A sentence with a box to tick, in rows that are high enough for a square one. */
function ticked(text: string, size: number): Piece {
  const words = apart(textPiece(text, size, { from: 1 }))
  const box: Piece = {
    heights: words.heights.map(() => lineHeight(size) + 1),
    texts: [],
    looks: [{ cells: cell(0, 0), lines: 'box' }],
  }
  return beside([
    [0, box],
    [0, words],
  ])
}
