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
export async function shownFills(workbook: Uint8Array, locale?: string): Promise<(string | null)[][]> {
  const [fills = []] = await allShownFills([workbook], locale)
  return fills
}

/** The same of several workbooks, for one start of LibreOffice. */
export async function allShownFills(
  workbooks: readonly Uint8Array[],
  locale?: string,
): Promise<(string | null)[][][]> {
  const pages = await allConverted(workbooks, 'xlsx', 'html', locale)
  return pages.map((page) => fillsOf(new TextDecoder().decode(page)))
}

/** How a file of comma-separated values is read: commas, quotation marks, UTF-8, from the first line on. */
const IMPORTS: Readonly<Record<string, readonly string[]>> = { csv: ['--infilter=CSV:44,34,76,1'] }

type Format = 'xlsx' | 'ods' | 'csv' | 'html'

/**
 * A file opened by LibreOffice, every formula worked out anew, and saved in another format. Rejects where it cannot be opened: without a
 * window nothing is repaired, and no file saved. A sheet whose XML breaks off is no such case: it is saved with the cells before the break,
 * so compare the cells too.
 */
export async function converted(
  bytes: Uint8Array,
  from: Format,
  to: Format,
  locale?: string,
): Promise<Uint8Array> {
  const [file = new Uint8Array()] = await allConverted([bytes], from, to, locale)
  return file
}

/** The same of several files, for one start of LibreOffice. Rejects where one of them cannot be opened. */
export async function allConverted(
  files: readonly Uint8Array[],
  from: Format,
  to: Format,
  locale = 'en-GB',
): Promise<Uint8Array[]> {
  const folder = await mkdtemp(join(tmpdir(), 'columnwise-'))
  try {
    const [given, out] = [join(folder, 'given'), join(folder, 'out')]
    const user = join(folder, 'profile', 'user')
    for (const each of [given, out, user]) await mkdir(each, { recursive: true })
    await writeFile(join(user, 'registrymodifications.xcu'), settings(locale))
    const paths = files.map((_, index) => join(given, `book${index}.${from}`))
    for (const [index, path] of paths.entries()) await writeFile(path, files[index] ?? '')
    const profile = `-env:UserInstallation=${pathToFileURL(join(folder, 'profile')).href}`
    const options = [profile, '--headless', ...(IMPORTS[from] ?? []), '--convert-to', to, '--outdir', out]
    await promisify(execFile)(LIBREOFFICE ?? 'soffice', [...options, ...paths], { timeout: 120_000 })
    return await Promise.all(
      files.map(async (_, index) => new Uint8Array(await readFile(join(out, `book${index}.${to}`)))),
    )
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

/** LibreOffice's own settings, as its profile keeps them: the locale, and that formulas are worked out anew whenever a file is opened. */
function settings(locale: string): string {
  const item = (path: string, name: string, value: string | number) =>
    `<item oor:path="${path}"><prop oor:name="${name}" oor:op="fuse"><value>${value}</value></prop></item>`
  return `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema">
${item('/org.openoffice.Setup/L10N', 'ooSetupSystemLocale', locale)}
${item('/org.openoffice.Office.Calc/Formula/Load', 'OOXMLRecalcMode', 0)}
${item('/org.openoffice.Office.Calc/Formula/Load', 'ODFRecalcMode', 0)}
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
