import { describe, expect, it } from 'vitest'
import { takenSentence } from '../../../taskpane/common/taken'

describe('cells that are not empty', () => {
  const place = (...taken: string[]) => ({ sheet: { name: 'Heron' }, taken })

  it('are named, the first six of many', () => {
    expect(takenSentence(place('B2'))).toBe('Cell B2 on Heron is not empty. Write over it?')
    expect(takenSentence(place('A1', 'A2', 'A3', 'A4', 'A5', 'A6', 'A7', 'A8'))).toBe(
      'Cells A1, A2, A3, A4, A5, A6 and 2 more on Heron are not empty. Write over them?',
    )
  })
})
