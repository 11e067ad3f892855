import { plainText, tagsOf, unescaped, type Tag } from './xml'

/** The texts that cells share, in order: the shared strings of a workbook (ECMA-376, CT_Sst). */
export function textsIn(xml: string): string[] {
  const texts: string[] = []
  let item: TextItem | null = null
  for (const tag of tagsOf(xml)) {
    if (tag.depth === 1 && tag.name === 'si') {
      if (tag.kind !== 'close') item = new TextItem(xml, 1)
      if (tag.kind !== 'open') texts.push(item?.text ?? '')
    } else item?.take(tag)
  }
  return texts
}

/**
 * Gathers a text (ECMA-376, CT_Rst) from the tags within its element, which stands at a depth: plain, or in runs of their own looks; how
 * it is pronounced is left out.
 */
export class TextItem {
  text = ''
  private child = ''
  private start = 0

  constructor(
    private readonly xml: string,
    private readonly depth: number,
  ) {}

  take({ kind, name, depth, start, end }: Tag): void {
    const within = depth - this.depth
    if (within === 1 && kind === 'open') this.child = name
    if (name !== 't' || kind === 'empty' || !(within === 1 || (within === 2 && this.child === 'r'))) return
    if (kind === 'open') this.start = end
    else this.text += unescaped(plainText(this.xml.slice(this.start, start)))
  }
}
