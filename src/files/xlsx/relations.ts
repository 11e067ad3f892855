import type { Package } from './package'
import { attributesOf, tagsOf } from './xml'

/** What a part leads to: a part of the file, by its full name. `kind` is the last word of its type ("worksheet", "styles"). */
export interface Relation {
  readonly id: string
  readonly kind: string
  readonly type: string
  readonly part: string
}

/** The part that holds the relations of a part; of the file itself, where `part` is "". */
export function relationsPart(part: string): string {
  const slash = part.lastIndexOf('/') + 1
  return `${part.slice(0, slash)}_rels/${part.slice(slash)}.rels`
}

/** More than any workbook's part has. */
const MOST_RELATIONS = 20_000

/** What a part leads to within the file (ECMA-376, part 2); nothing where it has no relations. Throws Unreadable. */
export async function relationsOf(file: Package, part: string): Promise<Relation[]> {
  const list = relationsPart(part)
  return file.has(list) ? file.parse(list, (xml) => relationsIn(xml, part)) : []
}

function relationsIn(xml: string, part: string): Relation[] {
  const found: Relation[] = []
  for (const tag of tagsOf(xml)) {
    if (tag.name !== 'Relationship' || tag.kind === 'close') continue
    const attributes = attributesOf(xml, tag)
    if (attributes.get('TargetMode') === 'External') continue
    if (found.length === MOST_RELATIONS) throw new SyntaxError('It holds too many relations.')
    const type = attributes.get('Type') ?? ''
    const kind = type.split('/').at(-1) ?? ''
    const target = attributes.get('Target') ?? ''
    found.push({ id: attributes.get('Id') ?? '', kind, type, part: resolved(target, part) })
  }
  return found
}

/** A target as seen from a part: from the root, or from the part's own folder. */
function resolved(target: string, part: string): string {
  try {
    return decodeURIComponent(new URL(target, `file:///${part}`).pathname.slice(1))
  } catch {
    return target
  }
}
