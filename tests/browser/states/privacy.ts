import { type State } from './steps'

export const PRIVACY: readonly State[] = [
  {
    name: 'the page',
    open: async ({ pane }) => {
      await pane.goto(new URL('privacy.html', pane.url()).href)
    },
  },
]
