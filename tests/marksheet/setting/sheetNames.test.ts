import { describe, expect, it } from 'vitest'
import { datedName, isSameSheet, numberedName } from '../../../src/marksheet/setting/sheetNames'

describe('the name of a sheet', () => {
  it('is numbered where it is taken', () => {
    expect([1, 2, 12].map((number) => numberedName('Record', number))).toEqual([
      'Record',
      'Record (2)',
      'Record (12)',
    ])
  })

  it('is never longer than the 31 characters that Excel allows', () => {
    const long = 'Through zeros, Thursday 26 November 2026'
    expect([1, 2, 12].map((number) => numberedName(long, number))).toEqual([
      'Through zeros, Thursday 26 Nove',
      'Through zeros, Thursday 26 (2)',
      'Through zeros, Thursday 26 (12)',
    ])
  })

  it('carries its day, and keeps it where it is numbered too', () => {
    expect(datedName('Subtraction', '2026-11-06')).toBe('Subtraction 6 Nov')
    expect(datedName('Personal sets', '2026-09-30')).toBe('Personal sets 30 Sep')
    expect(numberedName(datedName('Add and subtract', '2026-12-24'), 12)).toBe('Add and subtract 24 Dec (12)')
  })

  it('is the same in capitals', () => {
    expect(isSameSheet('Record', 'RECORD')).toBe(true)
    expect(isSameSheet('Record', 'Record (2)')).toBe(false)
  })
})
