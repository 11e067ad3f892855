import { execFile } from 'node:child_process'
import { existsSync } from 'node:fs'
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { promisify } from 'node:util'

/** Where LibreOffice is installed, or null. */
export const LIBREOFFICE =
  ['/usr/bin/soffice', '/usr/local/bin/soffice', '/Applications/LibreOffice.app/Contents/MacOS/soffice'].find(
    (path) => existsSync(path),
  ) ?? null

/**
 * The background that LibreOffice shows in every cell of a workbook's first sheet, conditional formats worked out: rows from A1, of six
 * hexadecimal digits or null. Read from its HTML export, which writes what the cells look like. `locale` is what the computer is set to, by
 * which numbers turn into text.
 */
export async function shownFills(workbook: Uint8Array, locale = 'en-GB'): Promise<(string | null)[][]> {
  const folder = await mkdtemp(join(tmpdir(), 'columnwise-'))
  try {
    const file = join(folder, 'book.xlsx')
    await writeFile(file, workbook)
    const user = join(folder, 'profile', 'user')
    await mkdir(user, { recursive: true })
    await writeFile(join(user, 'registrymodifications.xcu'), localeSetting(locale))
    const profile = `-env:UserInstallation=${pathToFileURL(join(folder, 'profile')).href}`
    const options = [profile, '--headless', '--convert-to', 'html', '--outdir', folder, file]
    await promisify(execFile)(LIBREOFFICE ?? 'soffice', options, { timeout: 120_000 })
    return fillsOf(await readFile(join(folder, 'book.html'), 'utf8'))
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

/** LibreOffice's own setting of the locale, as its profile keeps it. */
function localeSetting(locale: string): string {
  return `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema">
<item oor:path="/org.openoffice.Setup/L10N"><prop oor:name="ooSetupSystemLocale" oor:op="fuse"><value>${locale}</value></prop></item>
</oor:items>`
}

function fillsOf(html: string): (string | null)[][] {
  const [table = ''] = /<table[\s\S]*?<\/table>/.exec(html) ?? []
  const rows: (string | null)[][] = []
  table
    .split('<tr>')
    .slice(1)
    .forEach((row, top) => {
      for (const [, attributes = ''] of row.matchAll(/<td([^>]*)>/g)) {
        const line = (rows[top] ??= [])
        const number = (name: string) => Number(new RegExp(`${name}="?(\\d+)`).exec(attributes)?.[1] ?? 1)
        const fill = /bgcolor="#(\w{6})"/i.exec(attributes)?.[1]?.toUpperCase() ?? null
        let left = 0
        while (line[left] !== undefined) left++
        for (let down = 0; down < number('rowspan'); down++) {
          for (let across = 0; across < number('colspan'); across++)
            (rows[top + down] ??= [])[left + across] = fill
        }
      }
    })
  return rows
}
