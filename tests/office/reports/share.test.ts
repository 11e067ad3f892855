import { describe, expect, it } from 'vitest'
import { review } from '../../../src/marksheet/marking/review'
import { takeBack } from '../../../src/office/edit/edit'
import { readSheet } from '../../../src/office/workbook/read'
import { writeShared } from '../../../src/office/reports/share'
import { benchOf, everything, problemIn, shown } from '../host'

async function share(how: 'initials' | 'codes') {
  const { matrix, sheets } = await readSheet()
  return writeShared(review(matrix), how, 'seed', sheets)
}

describe('a sheet to share', () => {
  it('is written beside the marksheet, which stays as it is, and Undo takes it away', async () => {
    const bench = await benchOf('kestrel-plain')
    const before = shown(bench)
    const done = await share('codes')
    expect(everything(bench)[0]).toEqual(before[0])
    const { matrix } = await readSheet(bench.sheetId('To share'))
    expect(matrix.values[0]?.[0]).toBe('Columnwise · To share')
    expect(matrix.values[5]?.[0]).toMatch(/^Pupil 0?1$/)
    expect(bench.host.unsupported).toEqual(new Map())
    await takeBack(done)
    expect(shown(bench)).toEqual(before)
  })

  it('is written anew in place of an earlier one, and holds no marksheet to be marked', async () => {
    const bench = await benchOf('kestrel-plain')
    await share('codes')
    const done = await share('initials')
    expect(bench.grid.sheets().filter(({ name }) => name.startsWith('To share'))).toHaveLength(1)
    expect(review((await readSheet(bench.sheetId('To share'))).matrix)).toEqual([])
    await takeBack(done)
    expect((await readSheet(bench.sheetId('To share'))).matrix.values[5]?.[0]).toMatch(/^Pupil/)
  })

  it('is refused with a sentence where there is no marksheet', async () => {
    await benchOf('kestrel-plain')
    const { sheets } = await readSheet()
    const { sentence } = await problemIn(writeShared([], 'codes', 'seed', sheets))
    expect(sentence).toBe('There is no marksheet to share.')
  })
})
