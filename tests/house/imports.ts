import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import path from 'node:path'

/** Which files of the project each file imports, types included, by paths from the top. */
export type Imports = ReadonlyMap<string, readonly string[]>

/** Reads what every source under some folders imports. */
export function importsOf(folders: readonly string[]): Imports {
  const files = folders
    .flatMap((folder) =>
      readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((name) => path.join(folder, name)),
    )
    .filter((file) => /\.(?:tsx?|js)$/.test(file))
  return new Map(files.map((file) => [file, importedBy(file)]))
}

function importedBy(file: string): string[] {
  const named = readFileSync(file, 'utf8').matchAll(
    /(?:from|import)\s*\(?\s*(?:\/\*[^]*?\*\/\s*)?'(\.[^']+)'/g,
  )
  return [...new Set(Array.from(named, ([, name = '']) => fileAt(path.join(path.dirname(file), name))))]
    .filter((found) => found !== null)
    .sort()
}

const fileAt = (place: string): string | null =>
  ['', '.ts', '.tsx', '.js', '/index.ts']
    .map((ending) => place + ending)
    .find((name) => existsSync(name) && statSync(name).isFile()) ?? null

/** A file that imports itself by way of others, with the way; null where none does. */
export function circleIn(imports: Imports): readonly string[] | null {
  const done = new Set<string>()
  const from = (file: string, way: readonly string[]): readonly string[] | null => {
    if (way.includes(file)) return [...way.slice(way.indexOf(file)), file]
    if (done.has(file)) return null
    for (const next of imports.get(file) ?? []) {
      const circle = from(next, [...way, file])
      if (circle) return circle
    }
    done.add(file)
    return null
  }
  for (const file of imports.keys()) {
    const circle = from(file, [])
    if (circle) return circle
  }
  return null
}
