/** A day as Record keeps it: "2026-11-06". Local time. */
export function dayOf(date: Date): string {
  const part = (value: number) => String(value).padStart(2, '0')
  return `${date.getFullYear()}-${part(date.getMonth() + 1)}-${part(date.getDate())}`
}

/** A day of the record as it is read: "6 November 2026"; the text itself where it is no day. */
export function dayInWords(day: string): string {
  const date = new Date(`${day}T12:00:00Z`)
  if (Number.isNaN(date.getTime())) return day
  return date.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' })
}

/** The first day of the school year that a day lies in: 1 September. */
export function schoolYearFrom(day: string): string {
  const [year = '', month = ''] = day.split('-')
  return `${Number(month) >= 9 ? year : String(Number(year) - 1)}-09-01`
}
