/** A count with its noun: "1 pupil", "2,000 pupils". The plural takes an s. */
export function counted(count: number, noun: string): string {
  return `${count.toLocaleString('en-GB')} ${noun}${count === 1 ? '' : 's'}`
}
