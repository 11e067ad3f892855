import { createDarkTheme, createLightTheme, type BrandVariants, type Theme } from '@fluentui/react-components'
import { LOOKS } from '../src/marksheet/marking/looks'

/** Shades of the blue in which right answers are shown, from its ink (50) to its fill (160). */
const BLUES: BrandVariants = {
  10: '#020c14',
  20: '#07192a',
  30: '#0b2740',
  40: '#0f3350',
  50: `#${LOOKS.right.ink}`,
  60: '#1a4d76',
  70: '#215d8e',
  80: '#2a6ca3',
  90: '#3f7fb4',
  100: '#5893c3',
  110: '#72a6d0',
  120: '#8cb8db',
  130: '#a6cae6',
  140: '#bfd9ee',
  150: '#cfe2f3',
  160: `#${LOOKS.right.fill}`,
}

const DARK = createDarkTheme(BLUES)

/** The pane's colours on a light and on a dark background. */
export const THEMES: Readonly<Record<'light' | 'dark', Theme>> = {
  light: createLightTheme(BLUES),
  dark: {
    ...DARK,
    colorBrandForeground1: BLUES[120],
    colorBrandForeground2: BLUES[130],
    // Of Fluent's own shades the text under the pointer has a contrast of 4.38 on our background; 4.5 is needed (WCAG 2, 1.4.3).
    colorNeutralForeground2BrandHover: BLUES[120],
    colorNeutralForeground2BrandPressed: BLUES[110],
  },
}

const DARK_WANTED = '(prefers-color-scheme: dark)'

/** Whether Excel is dark, by its own theme; where it does not tell, by what the system prefers. */
export function isDark(): boolean {
  const officeTheme = themeOfExcel()
  if (typeof officeTheme?.isDarkTheme === 'boolean') return officeTheme.isDarkTheme
  const [, r, g, b] = /^#?(..)(..)(..)$/.exec(officeTheme?.bodyBackgroundColor ?? '') ?? []
  if (r === undefined || g === undefined || b === undefined) return matchMedia(DARK_WANTED).matches
  return [r, g, b].reduce((sum, part) => sum + parseInt(part, 16), 0) < 384
}

/** Excel's own theme; undefined where it has none or cannot tell (then the client library throws). */
function themeOfExcel(): Partial<Office.OfficeTheme> | undefined {
  try {
    return Office.context.officeTheme
  } catch {
    return undefined
  }
}

/** Calls `changed` when Excel's theme may have changed: it tells nobody, so it is looked up whenever the pane comes to the front. */
export function watchTheme(changed: () => void): () => void {
  const wanted = matchMedia(DARK_WANTED)
  wanted.addEventListener('change', changed)
  window.addEventListener('focus', changed)
  return () => {
    wanted.removeEventListener('change', changed)
    window.removeEventListener('focus', changed)
  }
}
