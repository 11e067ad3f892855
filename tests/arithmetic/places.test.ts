import { describe, expect, it } from 'vitest'
import { countOf, oneOf, placeName } from '../../src/arithmetic/places'

describe('place names', () => {
  it.each([
    [0, 'one', 'ones'],
    [1, 'ten', 'tens'],
    [4, 'ten thousand', 'ten thousands'],
    [6, 'million', 'millions'],
    [9, 'billion', 'billions'],
    [14, 'hundred trillion', 'hundred trillions'],
    [15, 'quadrillion', 'quadrillions'],
    [-1, 'tenth', 'tenths'],
    [-3, 'thousandth', 'thousandths'],
  ])('calls place %i %s, and more of them %s', (place, one, many) => {
    expect(oneOf(place)).toBe(one)
    expect(placeName(place)).toBe(many)
  })

  it('repeats one, ten, hundred in every group of three places', () => {
    for (let place = 3; place + 2 <= 14; place += 3) {
      expect(oneOf(place + 1)).toBe(`ten ${oneOf(place)}`)
      expect(oneOf(place + 2)).toBe(`hundred ${oneOf(place)}`)
    }
  })

  it('counts one in the singular, anything else in the plural', () => {
    expect([0, 1, 12].map((count) => countOf(count, 1))).toEqual(['0 tens', '1 ten', '12 tens'])
  })

  it.each([16, -4, 0.5])('refuses place %d, which no question reaches', (place) => {
    expect(() => placeName(place)).toThrow(RangeError)
  })
})
