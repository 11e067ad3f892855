import { describe, expect, it } from 'vitest'
import { openStage, useStage } from './stage'

useStage()

describe('the pane’s own policy', () => {
  it('lets no text run as a program and nothing be sent elsewhere', async () => {
    const { pane } = await openStage()
    const blocked = await pane.evaluate(async () => {
      const seen: string[] = []
      document.addEventListener('securitypolicyviolation', ({ effectiveDirective, originalPolicy }) => {
        if (originalPolicy.startsWith("default-src 'none'")) seen.push(effectiveDirective)
      })
      const script = document.createElement('script')
      script.textContent = 'document.title = "ran"'
      document.head.append(script)
      await fetch('https://elsewhere.invalid/').catch(() => undefined)
      const image = document.createElement('img')
      image.src = 'https://elsewhere.invalid/name.png'
      await new Promise((resolve) => setTimeout(resolve, 200))
      return [...seen.toSorted(), document.title]
    })
    expect(blocked).toEqual(['connect-src', 'img-src', 'script-src-elem', 'Columnwise'])
  })
})
