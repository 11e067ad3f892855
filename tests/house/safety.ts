import ts from 'typescript'

/** Names by which a page keeps something outside the workbook, in the browser or on the computer. */
const STORES = [
  'localStorage',
  'sessionStorage',
  'indexedDB',
  'cookie',
  'cookieStore',
  'caches',
  'showSaveFilePicker',
  'serviceWorker',
]
/** Names by which a page sends something away. */
const SENDS = [
  'fetch',
  'XMLHttpRequest',
  'sendBeacon',
  'WebSocket',
  'EventSource',
  'WebTransport',
  'RTCPeerConnection',
]
/** Names by which a page runs text as a program, or puts text into itself as markup. */
const RUNS = [
  'eval',
  'Function',
  'innerHTML',
  'outerHTML',
  'insertAdjacentHTML',
  'dangerouslySetInnerHTML',
  'importScripts',
]

const FORBIDDEN: ReadonlySet<string> = new Set([...STORES, ...SENDS, ...RUNS])

/** The uses in a source of what stores, sends or runs something: "name (line)". Comments, texts and types do not count. */
export function unsafeUses(file: string, source: string): string[] {
  const tree = ts.createSourceFile(
    file,
    source,
    ts.ScriptTarget.ES2022,
    true,
    file.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS,
  )
  const found: string[] = []
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node)) return
    if (ts.isIdentifier(node) && FORBIDDEN.has(node.text)) {
      const { line } = tree.getLineAndCharacterOfPosition(node.getStart(tree))
      found.push(`${node.text} (${file}:${line + 1})`)
    }
    ts.forEachChild(node, visit)
  }
  visit(tree)
  return found
}

/** The parts of the policy in a page's meta element, by their names; null where there is none. */
export function policyOf(page: string): ReadonlyMap<string, readonly string[]> | null {
  const [, content] = /http-equiv="Content-Security-Policy"\s+content="([^"]*)"/.exec(page) ?? []
  if (content === undefined) return null
  return new Map(
    content
      .split(';')
      .map((part) => part.trim().split(/\s+/))
      .map(([name = '', ...sources]) => [name, sources]),
  )
}
