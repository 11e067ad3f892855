import { describe, expect, it, vi } from 'vitest'
import { AREAS } from '../../../taskpane/areas'
import { FIRST_AREA, Navigation } from '../../../taskpane/common/navigation'
import { asked } from '../../support/asked'

describe('the way through the pane', () => {
  it('begins at the first area, and opens another by its id', () => {
    const navigation = new Navigation()
    expect(navigation.state()).toEqual({ open: FIRST_AREA, toModel: null })
    navigation.show('set')
    expect(navigation.state().open).toBe('set')
  })

  it('opens Model with a question and a fault; asking for the same again counts anew', () => {
    const navigation = new Navigation()
    const told = vi.fn()
    navigation.subscribe(told)
    const wanted = { question: asked('305 − 128'), fault: 'nine-for-free' } as const
    navigation.model(wanted)
    const first = navigation.state()
    expect(AREAS.map(({ id }) => id)).toContain(first.open)
    expect(first).toEqual({ open: 'model', toModel: wanted })
    navigation.model(wanted)
    expect(navigation.state().toModel).not.toBe(first.toModel)
    expect(told).toHaveBeenCalledTimes(2)
  })
})
