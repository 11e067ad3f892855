import { workFor } from '../../../src/marksheet/reports/needs'
import type { SetWish } from '../../../src/marksheet/setting/nextSet'
import type { PrintedSheet } from '../../../src/marksheet/reports/pupilReport'
import { planWeek } from '../../../src/marksheet/record/week'
import { supportGroups } from '../../../src/mastery/support'
import { dayInWords } from './day'
import type { Person } from '../pupils/people'

/** This week's page for some pupils, in groups of at most `size`. `day` as Record keeps it. */
export function weekPage(
  people: readonly Person[],
  { size, wish, className, day }: { size: number; wish: SetWish; className: string; day: string },
): PrintedSheet {
  return {
    table: planWeek({
      className,
      date: dayInWords(day),
      byNeed: supportGroups(people, size).map(({ need, pupils }) => ({
        need,
        names: pupils.map(({ name }) => name),
        work: workFor(need, wish),
      })),
    }),
    breaks: [],
  }
}
