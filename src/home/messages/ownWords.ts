/** A message without what is not its sender's own: quoted older messages, mail headers, the stamps of a chat. */
export interface OwnWords {
  readonly lines: readonly string[]
  /** Who wrote, as far as headers and stamps say so; each name once. */
  readonly senders: readonly string[]
}

const QUOTED = /^\s*(?:>|\||&gt;)/
const HEADER = /^\s*\*?(from|sent|to|cc|bcc|subject|date|reply-to|received)\*?:\s*(.*)$/i
/** What stands over an older message that is quoted below. */
const OLDER =
  /^\s*(?:[-_]{2,}\s*(?:original|previous) message|on\b.{4,120}\bwrote:\s*$|.{0,80}<\S+@\S+>\s*wrote:\s*$|[-_]{10,}\s*$)/i
const FORWARDED = /^\s*[-_]{2,}\s*forwarded message|^\s*begin forwarded message/i
const SENT_FROM = /^\s*(?:sent from (?:my )?|get outlook for|sent via )\S.*$/i
const STAMP =
  /^\s*(?:\[\s*\d{1,2}[/.-]\d{1,2}[/.-]\d{2,4},?\s+\d{1,2}:\d{2}(?::\d{2})?(?:\s*[ap]m)?\s*\]|\d{1,2}[/.-]\d{1,2}[/.-]\d{2,4},?\s+\d{1,2}:\d{2}(?:\s*[ap]m)?\s+-)\s*([^:\n]{1,40}):\s?(.*)$/i
/** The fewest header lines that make the head of a mail. */
const HEAD_LINES = 2

/** The sender's own words, line by line; what stands below an older message's head is left out, unless nothing stands above. */
export function ownWords(text: string): OwnWords {
  const senders = new Set<string>()
  const lines: string[] = []
  const all = joinedHeads(text.replace(/^\ufeff/, '').split(/\r\n?|\n/))
  for (let at = 0; at < all.length; at++) {
    const line = all[at] ?? ''
    if (FORWARDED.test(line) || SENT_FROM.test(line) || QUOTED.test(line)) continue
    const isSaid = lines.some((each) => /\d/.test(each))
    if (OLDER.test(line)) {
      if (isSaid || !/^\s*[-_]{10,}\s*$/.test(line)) break
      continue
    }
    const head = headAt(all, at)
    if (head.length >= HEAD_LINES || (head.length === 1 && /subject/i.test(head[0]?.name ?? ''))) {
      if (isSaid && head.length >= HEAD_LINES) break
      for (const { name, value } of head) if (name === 'from') senders.add(senderIn(value))
      at += head.length - 1
      continue
    }
    const [, sender, said] = STAMP.exec(line) ?? []
    if (sender !== undefined) senders.add(sender.trim())
    lines.push(said ?? line)
  }
  return { lines, senders: [...senders] }
}

/** Lines where "On … wrote:" that a mail program broke is one line again. */
function joinedHeads(lines: readonly string[]): string[] {
  const joined: string[] = []
  for (const line of lines) {
    const before = joined.at(-1)
    if (
      before !== undefined &&
      /wrote:\s*$/i.test(line) &&
      /^\s*on\b/i.test(before) &&
      !/^\s*on\b/i.test(line)
    )
      joined[joined.length - 1] = `${before} ${line.trim()}`
    else joined.push(line)
  }
  return joined
}

function headAt(lines: readonly string[], first: number): { name: string; value: string }[] {
  const head: { name: string; value: string }[] = []
  for (let at = first; at < lines.length; at++) {
    const [, name, value = ''] = HEADER.exec(lines[at] ?? '') ?? []
    if (name === undefined) break
    head.push({ name: name.toLowerCase(), value })
  }
  return head
}

function senderIn(value: string): string {
  return value.replace(/<.*$/, '').replace(/["']/g, '').trim()
}
