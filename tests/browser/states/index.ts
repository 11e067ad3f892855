import { SET } from './set'
import { MODEL } from './model'
import { MARK } from './mark'
import { REVIEW } from './review'
import { SETTINGS } from './settings'
import { PRIVACY } from './privacy'
import type { Walk } from './steps'

/** Every area with its states. The lesson's parts are read off its list, so that each new one is walked too. */
export const WALKS: readonly Walk[] = [
  { area: 'Set', states: SET },
  { area: 'Model', states: MODEL },
  { area: 'Mark', states: MARK },
  { area: 'Review', states: REVIEW },
  { area: 'Settings', states: SETTINGS },
  { area: 'Privacy', states: PRIVACY },
]
