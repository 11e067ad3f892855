import type { Unit } from '../../arithmetic/question'

const HEADS = ['O', 'T', 'H', 'Th', 'TTh', 'HTh', 'M', 'TM', 'HM']
const DECIMAL_HEADS = ['t', 'h', 'th']
const POUNDS = ['£1', '£10', '£100']
const PENCE = ['10p', '1p']

/**
 * What a column is headed, as primary books print it: O, T, H, Th, and t, h, th after the point; pounds and pence by the coins and notes;
 * '' beyond hundreds of millions.
 */
export function headOf(place: number, unit: Unit): string {
  const coin = unit === '£' ? (place < 0 ? PENCE[-place - 1] : POUNDS[place]) : undefined
  const penny = unit === 'p' ? PENCE.toReversed()[place] : undefined
  return coin ?? penny ?? (place < 0 ? DECIMAL_HEADS[-place - 1] : HEADS[place]) ?? ''
}
