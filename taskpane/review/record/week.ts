import { faultGroups, workAgainst, workAtType } from '../../../src/marksheet/reports/needs'
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
  const found = people.flatMap((person) => person.found ?? [])
  return {
    table: planWeek({
      className,
      date: dayInWords(day),
      byNeed: supportGroups(people, size).map(({ type, pupils }) => ({
        type,
        names: pupils.map(({ name }) => name),
        work: workAtType(type, wish),
      })),
      byFault: faultGroups(found).map(({ fault, pupils }) => ({
        fault,
        names: pupils.map(({ name }) => name),
        work: workAgainst(fault, wish),
      })),
    }),
    breaks: [],
  }
}
