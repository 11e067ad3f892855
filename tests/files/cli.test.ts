import { execFile } from 'node:child_process'
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import * as XLSX from 'xlsx'
import { expectedOf, pathOf } from '../marksheets'

interface Run {
  readonly code: number
  readonly out: string
  readonly err: string
}
function mark(...options: string[]): Promise<Run> {
  return new Promise((resolve) => {
    execFile(
      process.execPath,
      ['--import', 'tsx', 'src/files/cli.ts', ...options],
      { maxBuffer: 2 ** 25 },
      (error, out, err) => {
        resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, err })
      },
    )
  })
}

let folder = ''
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'columnwise-'))
})
afterAll(() => rm(folder, { recursive: true }))

interface Json {
  readonly sheets: readonly {
    readonly pupils: readonly {
      readonly name: string
      readonly faults: readonly { readonly id: string; readonly explains: string[] }[]
    }[]
  }[]
}

describe('the command line', () => {
  it('says what it left out, and marks the rest', async () => {
    const rows = [
      ['Name', '321 − 185', '640 − 218'],
      ['Ada B', 136, 422],
      ['Ben C', '50%', '75%'],
      ['Cai D', 136, 0],
    ]
    const book = XLSX.utils.book_new()
    XLSX.utils.book_append_sheet(book, XLSX.utils.aoa_to_sheet(rows), 'Week 3')
    const file = join(folder, 'left-out.xlsx')
    await writeFile(file, XLSX.write(book, { type: 'buffer' }) as Buffer)
    const { code, out, err } = await mark(file, '--json')
    expect([code, err]).toEqual([
      0,
      'Week 3: A3 “Ben C” is left out: what stands beside it reads as counts, shares or words, not as a pupil’s answers.\n',
    ])
    const { sheets } = JSON.parse(out) as Json
    expect(sheets.flatMap(({ pupils }) => pupils.map(({ name }) => name))).toEqual(['Ada B', 'Cai D'])
  })

  it('prints the review as one line of JSON', async () => {
    const { code, out, err } = await mark(pathOf('kestrel-plain.xlsx'), '--json')
    expect([code, err]).toEqual([0, ''])
    const { sheets } = JSON.parse(out) as Json
    expect(sheets[0]).toMatchObject({
      sheet: 'Aut2 wk4',
      orientation: 'pupils-down',
      marked: false,
      questions: expect.arrayContaining([
        {
          cell: 'C4',
          text: '774 - 623 =',
          answer: '151',
          exchanges: 0,
          type: 'no exchange',
          skills: [],
        },
      ]) as unknown,
    })
    expect(out.trimEnd()).not.toContain('\n')
  })

  it('names the fault of every pupil of the class whose fault shows on three answers or more', async () => {
    const { out } = await mark(pathOf('kestrel-plain.xlsx'), '--json')
    const { pupils } = (JSON.parse(out) as Json).sheets[0] ?? { pupils: [] }
    for (const { name, truth } of expectedOf('kestrel-plain').pupils) {
      const named = pupils.find((pupil) => pupil.name === name)?.faults
      if (truth.fault !== null && (truth.visibleOn ?? 0) >= 3)
        expect([name, named?.[0]?.id]).toEqual([name, truth.fault])
      if (truth.fault === null) expect([name, named]).toEqual([name, []])
    }
  })

  it('prints a table for people', async () => {
    const { code, out } = await mark(pathOf('heron-notes.xlsx'))
    expect(code).toBe(0)
    expect(out).toMatch(/^Heron A5:M31: 26 pupils, 10 questions$/m)
    expect(out).toMatch(/^Daisy Mensah +9 of 9 +M15$/m)
  })

  it('ends quietly where its reader wants no more', async () => {
    const command = `"${process.execPath}" --import tsx src/files/cli.ts "${pathOf('heron-notes.xlsx')}" --json | head -c 10; exit \${PIPESTATUS[0]}`
    const { code, err } = await new Promise<Omit<Run, 'out'>>((resolve) => {
      execFile('bash', ['-c', command], (error, _, stderr) => {
        resolve({ code: typeof error?.code === 'number' ? error.code : 0, err: stderr })
      })
    })
    expect([code, err]).toEqual([0, ''])
  })

  it('saves a marked copy and leaves the workbook itself as it is', async () => {
    const [before, copy] = [await readFile(pathOf('wren-across.xlsx')), join(folder, 'copy.xlsx')]
    expect((await mark(pathOf('wren-across.xlsx'), '--out', copy)).code).toBe(0)
    expect(XLSX.readFile(copy).SheetNames).toContain('Mastery')
    expect((await readFile(pathOf('wren-across.xlsx'))).equals(before)).toBe(true)
    expect(await mark(copy, '--out', copy)).toMatchObject({
      code: 2,
      err: expect.stringMatching(/a name of its own/) as unknown,
    })
  })

  it('leaves out sheets without a marksheet', async () => {
    const file = join(folder, 'none.xlsx')
    const book = XLSX.utils.book_new()
    XLSX.utils.book_append_sheet(book, XLSX.utils.aoa_to_sheet([['Dinner money', 3.2]]), 'Other')
    XLSX.writeFile(book, file)
    expect(await mark(file, '--json')).toEqual({ code: 0, out: '{"sheets":[]}\n', err: '' })
    expect((await mark(file)).out).toMatch(/^No marksheet found/)
  })

  it.each([
    ['a file that is not there', async () => join(folder, 'nowhere.xlsx')],
    [
      'a file that is no workbook',
      async () => {
        const file = join(folder, 'text.xlsx')
        await writeFile(file, 'Name,932 − 457')
        return file
      },
    ],
    ['no file', async () => '--json'],
  ])('says in one line what is wrong with %s, and exits with 2', async (_what, file) => {
    const { code, out, err } = await mark(await file())
    expect([code, out, err.split('\n').length]).toEqual([2, '', 2])
  })
})
