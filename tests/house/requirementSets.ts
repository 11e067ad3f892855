import ts from 'typescript'

/** A use of a member of the client library that needs a requirement set, where it stands, and whether the file asks for that set first. */
export interface MemberUse {
  readonly member: string
  readonly set: string
  readonly version: string
  readonly place: string
  readonly guarded: boolean
}

/** "ExcelApi 1.9" in the documentation that the types carry: "[Api set: ExcelApi 1.9]". */
const API_SET = /\[\s*Api set:\s*(\w+)\s+(?:BETA|([\d.]+))/

/**
 * Every member of Office.js that these files use and that the library's own documentation puts into a requirement set. A use counts as
 * guarded where the file asks `isSetSupported` for that set in this version or a later one.
 */
export function memberUses(files: readonly string[], options: ts.CompilerOptions): MemberUse[] {
  const program = ts.createProgram([...files], options)
  const checker = program.getTypeChecker()
  const uses: MemberUse[] = []
  for (const source of program
    .getSourceFiles()
    .filter(({ fileName }) => files.some((file) => fileName.endsWith(file)))) {
    const guards = guardsIn(source.text)
    const visit = (node: ts.Node): void => {
      const symbol = ts.isPropertyAccessExpression(node) ? checker.getSymbolAtLocation(node.name) : undefined
      const needed = symbol && apiSetOf(symbol, checker)
      if (symbol && needed) {
        const { line } = source.getLineAndCharacterOfPosition(node.getStart())
        const guarded = guards.some(
          ([set, version]) => set === needed.set && isAtLeast(version, needed.version),
        )
        uses.push({
          ...needed,
          member: memberName(symbol),
          place: `${source.fileName.replace(/.*\/(?=src\/|taskpane\/)/, '')}:${line + 1}`,
          guarded,
        })
      }
      ts.forEachChild(node, visit)
    }
    visit(source)
  }
  return uses
}

/** The sets and versions that a file asks for with isSetSupported, the version as a text or as a constant of the file. */
function guardsIn(text: string): [set: string, version: string][] {
  return [...text.matchAll(/isSetSupported\(\s*'(\w+)',\s*(?:'([\d.]+)'|(\w+))/g)].map(
    ([, set = '', version, name = '']) => [
      set,
      version ?? new RegExp(`const ${name} = '([\\d.]+)'`).exec(text)?.[1] ?? '0',
    ],
  )
}

/** Whether a version such as "1.10" is another or a later one. */
export function isAtLeast(version: string, least: string): boolean {
  const [a = [], b = []] = [version, least].map((each) => each.split('.').map(Number))
  const first = a.findIndex((part, index) => part !== (b[index] ?? 0))
  return first < 0 ? a.length >= b.length : (a[first] ?? 0) > (b[first] ?? 0)
}

function apiSetOf(symbol: ts.Symbol, checker: ts.TypeChecker): { set: string; version: string } | null {
  const isLibrary = symbol.declarations?.some((each) =>
    each.getSourceFile().fileName.includes('@types/office-js'),
  )
  if (isLibrary !== true) return null
  const [, set, version] =
    API_SET.exec(ts.displayPartsToString(symbol.getDocumentationComment(checker))) ?? remarksOf(symbol)
  // What the library documents for mail alone is no matter here.
  return set === undefined || set === 'Mailbox' ? null : { set, version: version ?? 'BETA' }
}

function remarksOf(symbol: ts.Symbol): RegExpExecArray | [] {
  const texts = symbol.getJsDocTags().map(({ text }) => ts.displayPartsToString(text))
  return texts.map((text) => API_SET.exec(text)).find((found) => found !== null) ?? []
}

function memberName(symbol: ts.Symbol): string {
  const [declaration] = symbol.declarations ?? []
  const parent = declaration?.parent
  return parent && (ts.isClassDeclaration(parent) || ts.isInterfaceDeclaration(parent))
    ? `${parent.name?.text ?? ''}.${symbol.name}`
    : symbol.name
}
