import type { CheckResult } from '../contract'

/** The sheet that the report is written to. */
export const REPORT_SHEET = 'Host checks'

/** Writes how checks came out to a sheet of their own, made where there is none, those that failed first. */
export async function writeReport(results: readonly CheckResult[]): Promise<void> {
  const sorted = [...results].sort((a, b) => Number(a.passed) - Number(b.passed))
  const lines = sorted.map(({ name, passed, message }) => [passed ? 'passed' : 'failed', name, message])
  const values = [['', 'Check', 'What went wrong'], ...lines]
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
