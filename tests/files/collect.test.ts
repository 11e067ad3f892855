import { execFile } from 'node:child_process'
import { cp, mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import JSZip from 'jszip'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import * as XLSX from 'xlsx'
import type { Matrix } from '../../src/marksheet/layout/matrix'
import { HERON, marksheetOf, returnedBy, workbookOf } from '../home/collect/returned'

interface Run {
  readonly code: number
  readonly out: string
  readonly err: string
}

function collect(...options: string[]): Promise<Run> {
  return new Promise((resolve) => {
    execFile(process.execPath, ['--import', 'tsx', 'src/files/collect.ts', ...options], (error, out, err) => {
      resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, err })
    })
  })
}

interface Json {
  readonly written: readonly { pupil: string; question: string; cell: string; typed: string }[]
  readonly left: readonly { file: string; pupil: string; reason: string }[]
}
const jsonOf = ({ out }: Run) => JSON.parse(out) as Json

/** Sheets as a workbook by the other library. */
function bySheetjs(sheets: readonly Matrix[]): Uint8Array {
  const workbook = XLSX.utils.book_new()
  for (const { name, values } of sheets)
    XLSX.utils.book_append_sheet(workbook, XLSX.utils.aoa_to_sheet(values.map((row) => [...row])), name)
  return new Uint8Array(XLSX.write(workbook, { type: 'array', bookType: 'xlsx' }) as ArrayBuffer)
}

let folder = ''
const at = (name: string) => join(folder, name)
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'columnwise-'))
  const notes: Matrix = { name: 'Notes', values: [['a plan', 12]] }
  await writeFile(at('heron.xlsx'), await workbookOf([notes, marksheetOf(HERON, [[null, 999]])]))
  await mkdir(at('back/late'), { recursive: true })
  await writeFile(
    at('back/ada.xlsx'),
    await workbookOf(returnedBy(HERON, 'Ada Kay', { answers: [475, 321, '3-4'] })),
  )
  await writeFile(
    at('back/late/cai.xlsx'),
    bySheetjs(returnedBy(HERON, 'Cai Lane', { answers: ['£86', null, 86.5] })),
  )
  await writeFile(at('back/nobody.xlsx'), bySheetjs(returnedBy(HERON, null, { answers: [475] })))
  await writeFile(at('back/broken.xlsx'), (await readFile(at('back/ada.xlsx'))).subarray(0, 500))
  await writeFile(at('back/notes.txt'), 'Dear all')
  await writeFile(at('back/~$ada.xlsx'), 'in use')
  await writeFile(at('mail.txt'), 'Hi Miss,\n1) 475 2) 321 3) 86?\nLove Ben B')
})
afterAll(() => rm(folder, { recursive: true }))

describe('collecting by the command line', () => {
  it('writes what came back into the blank cells of a copy, and says what it left and why', async () => {
    const before = await readFile(at('heron.xlsx'))
    const run = await collect(at('heron.xlsx'), at('back'), '--out', at('copy.xlsx'), '--json')
    expect([run.code, run.err]).toEqual([0, ''])
    const { written, left } = jsonOf(run)
    expect(written).toEqual([
      { pupil: 'Ada Kay', question: '932 − 457', cell: 'B2', typed: '475' },
      { pupil: 'Ada Kay', question: '305 − 219', cell: 'D2', typed: '3-4' },
      { pupil: 'Cai Lane', question: '932 − 457', cell: 'B5', typed: '£86' },
      { pupil: 'Cai Lane', question: '305 − 219', cell: 'D5', typed: '86.5' },
    ])
    expect(left.map(({ file, pupil, reason }) => [file.slice(folder.length + 1), pupil, reason])).toEqual([
      ['back/broken.xlsx', '', expect.stringMatching(/^It cannot be read: .*damaged/)],
      ['back/nobody.xlsx', '', 'It has no name.'],
      ['back/notes.txt', '', expect.stringMatching(/^It cannot be read: /)],
      ['back/ada.xlsx', 'Ada Kay', 'C2 already holds “999”; “321” is not written over it.'],
    ])
    expect(await readFile(at('heron.xlsx'))).toEqual(before)
    const copy = XLSX.read(await readFile(at('copy.xlsx'))).Sheets.Heron
    expect(
      ['B2', 'C2', 'D2', 'B3', 'B5', 'C5', 'D5'].map(
        (cell) => (copy?.[cell] as XLSX.CellObject | undefined)?.v,
      ),
    ).toEqual([475, 999, '3-4', undefined, '£86', undefined, 86.5])
  })

  it('changes no part of the workbook but the sheet that is written to', async () => {
    await collect(at('heron.xlsx'), at('back/ada.xlsx'), '--out', at('parts.xlsx'))
    const [before, after] = await Promise.all(
      ['heron.xlsx', 'parts.xlsx'].map(async (name) => JSZip.loadAsync(await readFile(at(name)))),
    )
    const names = Object.keys(before?.files ?? {})
    expect(Object.keys(after?.files ?? {})).toEqual(names)
    const changed: string[] = []
    for (const name of names)
      if ((await before?.file(name)?.async('base64')) !== (await after?.file(name)?.async('base64')))
        changed.push(name)
    expect(changed).toEqual(['xl/worksheets/sheet2.xml'])
  })

  it('takes one pupil’s message', async () => {
    const run = await collect(
      at('heron.xlsx'),
      '--message',
      at('mail.txt'),
      '--pupil',
      'Ben Brook',
      '--out',
      at('mailed.xlsx'),
      '--json',
    )
    expect(jsonOf(run)).toEqual({
      written: [
        { pupil: 'Ben Brook', question: '932 − 457', cell: 'B3', typed: '475' },
        { pupil: 'Ben Brook', question: '642 − 321', cell: 'C3', typed: '321' },
      ],
      left: [
        {
          file: at('mail.txt'),
          pupil: 'Ben Brook',
          reason: expect.stringMatching(/^305 − 219: /) as unknown,
        },
      ],
    })
  })

  it('never takes another child’s message, nor a name that two have', async () => {
    const signed = await collect(
      at('heron.xlsx'),
      '--message',
      at('mail.txt'),
      '--pupil',
      'Cai Lane',
      '--out',
      at('no.xlsx'),
      '--json',
    )
    expect(jsonOf(signed).written).toEqual([])
    const shared = await collect(
      at('heron.xlsx'),
      '--message',
      at('mail.txt'),
      '--pupil',
      'Ben',
      '--out',
      at('no.xlsx'),
      '--json',
    )
    expect([shared.code, shared.err]).toEqual([2, 'Ben may be Ben Brook or Ben Mill: give the whole name.\n'])
  })

  it('leaves out the marksheet and the copy where they lie among the files', async () => {
    await mkdir(at('both'))
    await cp(at('heron.xlsx'), at('both/heron.xlsx'))
    await symlink(at('back/ada.xlsx'), at('both/ada.xlsx'))
    for (let time = 0; time < 2; time++) {
      const run = await collect(at('both/heron.xlsx'), at('both'), '--out', at('both/copy.xlsx'), '--json')
      expect(jsonOf(run).left).toHaveLength(1)
    }
  })

  it('never writes over the marksheet, not even through a link, nor over a file that is no copy', async () => {
    await symlink(at('heron.xlsx'), at('link.xlsx'))
    for (const out of ['heron.xlsx', 'link.xlsx', 'mail.txt']) {
      const { code, err } = await collect(at('heron.xlsx'), at('back'), '--out', at(out), '--json')
      expect([code, err.split('\n').length]).toEqual([2, 2])
    }
  })

  it.each([
    ['a marksheet that is not there', ['none.xlsx', 'back'], /^Cannot read .*none.xlsx/],
    ['a marksheet that is damaged', ['back/broken.xlsx', 'back'], /^Cannot read broken.xlsx: .*damaged/],
    ['a workbook without a marksheet', ['back/ada.xlsx', 'back'], /holds no marksheet/],
    [
      'a message that is no text',
      ['heron.xlsx', '--message', 'back/ada.xlsx', '--pupil', 'Ada Kay'],
      /^Cannot read .*ada.xlsx: it is not a text/,
    ],
    ['a message without a pupil', ['heron.xlsx', '--message', 'mail.txt'], /^Use: /],
    ['no files', ['heron.xlsx'], /^Use: /],
  ])('ends with 2 and one line: %s', async (_, options, sentence) => {
    const places = options.map((option) => (/^(?:--|Ada)/.test(option) ? option : at(option)))
    const { code, out, err } = await collect(...places, '--out', at('none-copy.xlsx'), '--json')
    expect([code, out]).toEqual([2, ''])
    expect(err).toMatch(sentence)
    expect(err.trim().split('\n')).toHaveLength(1)
  })
})
