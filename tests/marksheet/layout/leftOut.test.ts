import { describe, expect, it } from 'vitest'
import type { CellValue } from '../../../src/answers/typed'
import { findMarksheets } from '../../../src/marksheet/layout/find'
import { leavingOut } from '../../../src/marksheet/layout/leftOut'
import { NOTES_TITLE } from '../../../src/marksheet/layout/ownNotes'
import { atOnce } from '../../../src/marksheet/layout/steps'

function said(...values: CellValue[][]): string[] {
  const matrix = { name: 'S', values }
  return atOnce(leavingOut(matrix, findMarksheets(matrix)))
}

const HEADER = ['Name', '321 − 185', '640 − 218']
const CLASS: CellValue[][] = [HEADER, ['Ada B', 136, 422], ['Ben C', 264, 422]]

describe('what is left out of a sheet', () => {
  it('is nothing where all was read, sums, keys and spread questions among it', () => {
    expect(said(...CLASS, ['Average', 200, 422], ['Answers', 136, 422])).toEqual([])
    expect(said(['Name', 321], ['', '− 185'], ['Ada B', 136])).toEqual([])
  })

  it('is a child whose row is all percentages, or counts', () => {
    expect(said(...CLASS, ['Ada Common', '50%', '75%'])).toEqual([
      'A4 “Ada Common” is left out: what stands beside it reads as counts, shares or words, not as a pupil’s answers.',
    ])
    expect(said(HEADER, ['Ada B', 136, 422], ['Cai D', 0.5, 0.75], ['Ben C', 264, 422])).toHaveLength(1)
  })

  it('is a question without pupils, one sentence for all of a sheet', () => {
    expect(said(...CLASS, [], [], ['70 − 1'], ['80 − 2'])).toEqual([
      'The questions in A6 and A7 are left out: it is unclear which pupils they belong to.',
    ])
    expect(said(...CLASS, [], [], ['70 − 1'])).toEqual([
      'The question in A6 is left out: it is unclear which pupils it belongs to.',
    ])
  })

  it('is nobody who is read as a child of the next class', () => {
    const below = [...CLASS, ['Name', '70 − 1', '80 − 2'], ['Fay B', 69, 78], ['Grace W', '50%', 78]]
    expect(said(...below)).toEqual([])
  })

  it('is nothing on a sheet of ours, and no note of an earlier marking', () => {
    expect(said(['Columnwise · Answer key'], ['321 − 185', 136])).toEqual([])
    expect(said([...HEADER, '', NOTES_TITLE], ['Ada B', 136, 422], ['Ben C', 264, 422])).toEqual([])
  })
})
