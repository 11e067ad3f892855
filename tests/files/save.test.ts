import { execFileSync } from 'node:child_process'
import { link, mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { refusePlace, saveWhole } from '../../src/files/save'
import { bytesOf } from '../marksheets'
import { markedCopy } from './marked'

let folder = ''
let file = ''
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'columnwise-'))
  file = join(folder, 'class.xlsx')
  await writeFile(file, bytesOf('kestrel-plain'))
})
afterEach(() => rm(folder, { recursive: true }))

describe('the place of a marked copy', () => {
  it.each([
    ['its own name', () => Promise.resolve(file)],
    [
      'a symbolic link',
      async () => {
        await symlink(file, join(folder, 'soft.xlsx'))
        return join(folder, 'soft.xlsx')
      },
    ],
    [
      'a hard link',
      async () => {
        await link(file, join(folder, 'hard.xlsx'))
        return join(folder, 'hard.xlsx')
      },
    ],
    [
      'a linked folder',
      async () => {
        await symlink(folder, join(folder, 'way'))
        return join(folder, 'way', 'class.xlsx')
      },
    ],
  ])('is not the workbook itself under %s, forced or not', async (_what, out) => {
    const place = await out()
    for (const force of [false, true])
      await expect(refusePlace(file, place, force)).rejects.toThrow(/a name of its own/)
  })

  it('is a file that exists only where that is a marked copy as it was made, or with force', async () => {
    const out = join(folder, 'other.xlsx')
    await refusePlace(file, out, false)
    await writeFile(out, bytesOf('wren-across'))
    await expect(refusePlace(file, out, false)).rejects.toThrow(/--force/)
    await refusePlace(file, out, true)
    await writeFile(out, await markedCopy(bytesOf('kestrel-plain')))
    await refusePlace(file, out, false)
    await writeFile(out, '')
    await expect(refusePlace(file, out, false)).rejects.toThrow(/--force/)
  })

  it('is no folder', async () => {
    await expect(refusePlace(file, folder, true)).rejects.toThrow(/a folder/)
  })
})

describe('saving whole', () => {
  it('replaces a file and leaves nothing beside it', async () => {
    const out = join(folder, 'out.xlsx')
    await saveWhole(out, new Uint8Array([1, 2]))
    await saveWhole(out, new Uint8Array([3]))
    expect([...(await readFile(out))]).toEqual([3])
    expect((await readdir(folder)).sort()).toEqual(['class.xlsx', 'out.xlsx'])
  })

  it('keeps a link and replaces what it leads to', async () => {
    const [aim, soft] = [join(folder, 'aim.xlsx'), join(folder, 'soft.xlsx')]
    await writeFile(aim, 'old')
    await symlink(aim, soft)
    await saveWhole(soft, new Uint8Array([7]))
    expect([...(await readFile(aim))]).toEqual([7])
  })

  it('says where it cannot', async () => {
    await expect(saveWhole(join(folder, 'none', 'out.xlsx'), new Uint8Array())).rejects.toThrow(
      /Cannot write/,
    )
    await mkdir(join(folder, 'kept.xlsx'))
    await expect(saveWhole(join(folder, 'kept.xlsx'), new Uint8Array())).rejects.toThrow(/Cannot write/)
    expect((await readdir(folder)).sort()).toEqual(['class.xlsx', 'kept.xlsx'])
  })

  it('leaves what was there where the disk refuses more than a few bytes', async () => {
    const out = join(folder, 'out.xlsx')
    await writeFile(out, 'what was there')
    const save = `import('./src/files/save.ts').then(({ saveWhole }) => saveWhole(${JSON.stringify(out)}, new Uint8Array(200_000))).then(() => process.exit(0), (error) => { console.log(error.message); process.exit(2) })`
    // The shell's limit on the size of a file (in blocks of 1 KB) stands for a full disk; 'trap' turns its signal into an error.
    const script = `trap '' XFSZ; ulimit -f 100; "${process.execPath}" --import tsx -e "$SAVE" || exit 0; exit 9`
    const env = { ...process.env, SAVE: save, TSX_DISABLE_CACHE: '1' }
    expect(execFileSync('bash', ['-c', script], { env, encoding: 'utf8' })).toMatch(
      /^Cannot write .*out\.xlsx/,
    )
    expect(await readFile(out, 'utf8')).toBe('what was there')
    expect((await readdir(folder)).sort()).toEqual(['class.xlsx', 'out.xlsx'])
  })
})
