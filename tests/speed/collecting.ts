import { execFile } from 'node:child_process'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { fillCells } from '../../src/files/fill'
import { cellAt } from '../../src/files/xlsx/address'
import { homeSetsOf } from '../../src/home/fromMarksheet'
import { homeWorkbook } from '../../src/home/workbook'
import { findMarksheets } from '../../src/marksheet/layout/find'
import { marksheetOf, workbookOf } from '../home/collect/returned'
import type { Result } from './timing'

/** The most seconds that collecting 30 files may take, the start of the program included. */
const MOST = 3
const PUPILS = 30
const QUESTIONS = 12

/** Times the command line, from its start to its end, collecting the home workbooks of a class. */
export async function collecting(): Promise<Result> {
  const names = Array.from({ length: PUPILS }, (_, at) => `Pupil ${String.fromCharCode(65 + (at % 26))}${at}`)
  const questions = Array.from({ length: QUESTIONS }, (_, at) => `${900 + 7 * at} − ${111 + 13 * at}`)
  const room = { names, questions }
  const folder = await mkdtemp(join(tmpdir(), 'columnwise-'))
  try {
    const marksheet = join(folder, 'marksheet.xlsx')
    await writeFile(marksheet, await workbookOf([marksheetOf(room)]))
    const [found] = findMarksheets(marksheetOf(room))
    const homes = found ? homeSetsOf(found) : []
    const files = homes.map((_, at) => join(folder, `${at}.xlsx`))
    for (const [at, home] of homes.entries()) {
      const { bytes, sheet, items } = homeWorkbook(home, {
        feedback: 'hints',
        when: 'each',
        paper: 'squares',
      })
      const answers = items.flatMap(({ answerCell }, question) => {
        const cell = cellAt(answerCell)
        return cell ? [{ sheet, cell, content: 100 + question }] : []
      })
      await writeFile(files[at] ?? '', await fillCells(bytes, answers))
    }
    const command = ['--import', 'tsx', 'src/files/collect.ts', marksheet, ...files]
    const start = performance.now()
    const { stdout } = await promisify(execFile)(process.execPath, [
      ...command,
      '--out',
      join(folder, 'copy.xlsx'),
      '--json',
    ])
    const seconds = (performance.now() - start) / 1000
    const { written } = JSON.parse(stdout) as { written: unknown[] }
    return {
      name: 'Collecting',
      lines: [
        `${written.length} answers of ${PUPILS} files by the command line, its start included: ${seconds.toFixed(2)} s (at most ${MOST} s)`,
      ],
      met: seconds < MOST && written.length === PUPILS * QUESTIONS,
    }
  } finally {
    await rm(folder, { recursive: true })
  }
}
