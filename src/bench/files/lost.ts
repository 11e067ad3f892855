import JSZip from 'jszip'

/** What the file library does not keep, by where it lies in a file. */
const PARTS: readonly (readonly [RegExp, string])[] = [
  [/^xl\/charts\//, 'charts'],
  [/^xl\/media\//, 'pictures'],
  [/^xl\/drawings\/drawing/, 'drawings'],
  [/^xl\/pivotTables\//, 'pivot tables'],
  [/^xl\/slicers\//, 'slicers'],
  [/^xl\/vbaProject\.bin$/, 'macros'],
  [/^customXml\//, 'XML that add-ins keep'],
]

/** What a file holds that would be lost by opening and saving it on the bench, in words. */
export async function lostBySaving(bytes: ArrayBuffer): Promise<readonly string[]> {
  const { files } = await JSZip.loadAsync(bytes)
  const names = Object.keys(files)
  return PARTS.filter(([where]) => names.some((name) => where.test(name))).map(([, what]) => what)
}
