import fc from 'fast-check'
import JSZip from 'jszip'
import { describe, expect, it } from 'vitest'
import { crc32, zipped } from '../../src/home/zip'

describe('an archive', () => {
  // The check value of CRC-32/ISO-HDLC (Williams, A painless guide to CRC error detection algorithms, 1993; from memory).
  it('has the published check value of CRC-32', () => {
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926)
  })

  it('is read by a library that knows nothing of ours: every file, its text, checked by its sum', async () => {
    const names = fc.uniqueArray(fc.stringMatching(/^[a-z]{1,8}(\/[a-zé]{1,8}){0,2}\.xml$/), { minLength: 1 })
    await fc.assert(
      fc.asyncProperty(
        names,
        fc.array(fc.string({ unit: 'grapheme' })),
        fc.string(),
        async (all, texts, comment) => {
          const files = all.map((name, at) => ({ name, text: texts[at] ?? '' }))
          const zip = await JSZip.loadAsync(zipped(files, comment), { checkCRC32: true })
          const read = await Promise.all(
            files.map(async ({ name }) => ({ name, text: await zip.file(name)?.async('string') })),
          )
          expect(read).toEqual(files)
        },
      ),
      { numRuns: 40 },
    )
  })
})
