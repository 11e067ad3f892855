import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { asked, askedAs } from '../support/asked'
import { childCodes, CHILD_CODE, setCode, SET_CODE, shortName } from '../../src/home/codes'
import { namedSets } from '../../src/home/fromMarksheet'

const askedEach = (...texts: string[]) => texts.map(asked)

describe('the code of a set', () => {
  it('goes by the questions and their order, not by how they are written', () => {
    const code = setCode(askedEach('932 − 457', '7,214 − 86'))
    expect(code).toMatch(SET_CODE)
    expect(setCode(askedEach('1) 932-457 =', 'subtract 86 from 7214'))).toBe(code)
    expect(setCode(askedEach('7,214 − 86', '932 − 457'))).not.toBe(code)
    expect(setCode(askedEach('932 + 457', '7,214 − 86'))).not.toBe(code)
  })
})

describe('the codes of children', () => {
  it('are found again from the same name and set, however the name is spaced, and are others in another set', () => {
    const [code] = childCodes(['Ada K.'], 'S234567')
    expect(code).toMatch(CHILD_CODE)
    expect(childCodes([' ada  k. '], 'S234567')).toEqual([code])
    expect(childCodes(['Ada K.'], 'S234568')).not.toEqual([code])
  })

  it('differ in classes of a thousand, children of one name among them', () => {
    const names = Array.from({ length: 1000 }, (_, index) => `Child ${index % 990}`)
    expect(new Set(childCodes(names, 'S234567')).size).toBe(1000)
  })
})

describe('the short name', () => {
  it.each([
    ['Ada King', 'Ada K.'],
    ['Ada K.', 'Ada K.'],
    ['King, Ada', 'Ada K.'],
    ['Ada', 'Ada'],
    ['Ada Mary van der Kamp', 'Ada K.'],
    ['Łucja  Żak', 'Łucja Ż.'],
    ['P07', 'P07'],
    ['ada.king@example.org', ''],
    ['', ''],
  ])('of %s is %s', (name, short) => {
    expect(shortName(name)).toBe(short)
  })

  it('never holds a surname of two letters or more', () => {
    const word = fc.stringMatching(/^[A-Z][a-z]{2,8}$/)
    fc.assert(
      fc.property(word, word, (first, surname) => {
        fc.pre(!first.includes(surname))
        for (const name of [`${first} ${surname}`, `${surname}, ${first}`])
          expect(shortName(name)).not.toContain(surname)
      }),
    )
  })

  it('is told apart by the code where two children have it', () => {
    const questions = [askedAs('932 − 457')]
    const names = ['Ada King', 'Ada Knight', 'Bryn T.']
    const shown = namedSets(
      names,
      names.map(() => questions),
    ).map(({ child }) => child.name)
    expect(new Set(shown).size).toBe(3)
    expect(shown[0]).toMatch(/^Ada K\. \(C\w{6}\)$/)
    expect(shown[2]).toBe('Bryn T.')
  })
})
