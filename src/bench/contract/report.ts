import type { CheckResult } from '../contract'
import { environment } from './environment'

/** The sheet that the report is written to. */
export const REPORT_SHEET = 'Host checks'

type Line = readonly [outcome: string, what: string, message: string]

/** What was run where and how it came out, as lines of three texts: the environment, then the checks, those that failed first. */
export function reportLines(results: readonly CheckResult[]): readonly Line[] {
  const sorted = [...results].sort((a, b) => Number(a.passed) - Number(b.passed))
  return [
    ...environment().map(([what, value]): Line => ['', what, value]),
    ['', 'Check', 'What went wrong, or was found'],
    ...sorted.map(({ name, passed, message }): Line => [passed ? 'passed' : 'failed', name, message]),
  ]
}

/** The report as a text, a line each. */
export function reportText(results: readonly CheckResult[]): string {
  return reportLines(results)
    .map((line) => line.filter((text) => text !== '').join(': '))
    .join('\n')
}

/** Writes the report to a sheet of its own, made where there is none. */
export async function writeReport(results: readonly CheckResult[]): Promise<void> {
  const values = reportLines(results).map((line) => [...line])
  await Excel.run(async (context) => {
    const { worksheets } = context.workbook
    const present = worksheets.getItemOrNullObject(REPORT_SHEET)
    present.load('name')
    await context.sync()
    const sheet = present.isNullObject ? worksheets.add(REPORT_SHEET) : present
    sheet.getRange().clear()
    const range = sheet.getRangeByIndexes(0, 0, values.length, 3)
    range.numberFormat = values.map(() => ['@', '@', '@'])
    range.values = values
    sheet.activate()
    await context.sync()
  })
}
