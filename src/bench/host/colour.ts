import { invalidArgument } from './errors'

/** The few colour words that the bench takes besides #RRGGBB. */
const WORDS: Readonly<Record<string, string>> = {
  black: '#000000',
  white: '#FFFFFF',
  red: '#FF0000',
  green: '#008000',
  blue: '#0000FF',
  yellow: '#FFFF00',
  orange: '#FFA500',
  purple: '#800080',
  gray: '#808080',
  grey: '#808080',
}

/** A colour as #RRGGBB; throws InvalidArgument for anything that is none. */
export function readColour(value: unknown): string {
  if (typeof value !== 'string') throw invalidArgument()
  const hex = /^#?([0-9a-f]{6})$/i.exec(value)?.[1]
  const colour = hex === undefined ? WORDS[value.toLowerCase()] : `#${hex.toUpperCase()}`
  if (colour === undefined) throw invalidArgument()
  return colour
}
