import { describe, expect, it } from 'vitest'
import { circleIn, importsOf } from './imports'

/** Rooms from the ground up: each may import from those before it and from itself. */
const ROOMS = [
  'src/arithmetic',
  'src/answers',
  'src/items',
  'src/mastery',
  'src/lesson',
  'src/marksheet',
  'src/home',
  'src/office',
  'src/files',
  'src/functions',
  'taskpane',
]
/** What stands on one floor: none of them imports another. */
const ASIDE = ['src/office', 'src/files', 'src/functions']

const roomOf = (file: string) => ROOMS.find((room) => file.startsWith(`${room}/`)) ?? file
const imports = importsOf(['src', 'taskpane'])
const apartFromTheBench = new Map([...imports].filter(([file]) => !file.startsWith('src/bench/')))

describe('imports', () => {
  it('are found in every room', () => {
    expect(new Set([...apartFromTheBench.keys()].map(roomOf))).toEqual(new Set(ROOMS))
    expect([...imports.values()].flat().length).toBeGreaterThan(1000)
  })

  it('run in no circle, but among the bench’s classes, which name each other as Excel’s do', () => {
    expect(circleIn(apartFromTheBench)).toBeNull()
  })

  it('point one way from room to room, and none to the bench', () => {
    const wrong = [...apartFromTheBench].flatMap(([file, imported]) =>
      imported
        .filter((other) => {
          const [from, to] = [roomOf(file), roomOf(other)]
          return (
            ROOMS.indexOf(to) > ROOMS.indexOf(from) ||
            !ROOMS.includes(to) ||
            (from !== to && ASIDE.includes(from) && ASIDE.includes(to))
          )
        })
        .map((other) => `${file} → ${other}`),
    )
    expect(wrong).toEqual([])
  })

  it('in a circle are found, with the way round', () => {
    const circle = new Map([
      ['a', ['b', 'd']],
      ['b', ['d']],
      ['c', ['a']],
      ['d', ['c']],
    ])
    expect(circleIn(circle)).toEqual(['a', 'b', 'd', 'c', 'a'])
  })
})
