import { addressOf, type CellRef } from '../../marksheet/layout/matrix'
import type { SheetRef } from '../edit/cells'
import { perform, type Done, type Edit } from '../edit/edit'
import { Problem, protectedSheet } from '../edit/errors'
import { UNWATCHED, type Part, type Work } from '../edit/work'

/** A comment to put on a cell. */
export interface CellComment extends CellRef {
  readonly text: string
}

/** What a comment of ours begins with, by which it is found again. */
const OURS = 'Columnwise: '
/** The requirement set that has comments. */
export const HAS_COMMENTS = '1.10'

/**
 * Puts comments on cells of a sheet, in place of all comments of ours there; none given takes ours off. A cell with somebody else's
 * comment is left alone. Throws Problem where Excel is too old for comments.
 */
export async function writeComments(
  sheet: SheetRef,
  comments: readonly CellComment[],
  work: Work = UNWATCHED,
): Promise<{ readonly done: Done; readonly written: number }> {
  if (!Office.context.requirements.isSetSupported('ExcelApi', HAS_COMMENTS))
    throw new Problem(
      'This version of Excel does not let add-ins write comments.',
      'Update Excel, or open the workbook in Excel on the web. The same sentences stand here under Why.',
    )
  const edit = new CommentsEdit(sheet, comments)
  const title = comments.length > 0 ? `comments on ${sheet.name}` : `taking off of comments on ${sheet.name}`
  const done = await perform(title, [edit], work)
  return { done, written: edit.written }
}

interface Placed {
  readonly id: string
  readonly address: string
  readonly content: string
}

/** Puts comments on a sheet in place of ours; see `writeComments`. */
export class CommentsEdit implements Edit {
  readonly what: string
  readonly keep = [() => [this.#list()], () => [this.#places()]]
  readonly look = this.keep
  /** How many comments were written: those for cells without somebody else's. */
  written = 0
  #listed: Excel.CommentCollection | undefined
  #protection: Excel.WorksheetProtection | undefined
  #found: { readonly id: string; readonly content: string; readonly range: Excel.Range }[] = []
  #before: readonly Placed[] = []

  constructor(
    private readonly sheet: SheetRef,
    private readonly wanted: readonly CellComment[],
  ) {
    this.what = `the comments on ${sheet.name}`
  }

  check(): void {
    this.#before = this.#ours()
    const { protected: isProtected, options } = this.#protection ?? {}
    if (isProtected === true && options?.allowEditObjects !== true) throw protectedSheet(this.sheet.name)
  }

  readonly write = (): Part[] => {
    const theirs = new Set(
      this.#placed().flatMap(({ content, address }) => (isOurs(content) ? [] : [address])),
    )
    const free = this.wanted
      .map((comment) => ({ address: addressOf(comment), content: OURS + comment.text }))
      .filter(({ address }) => !theirs.has(address))
    this.written = free.length
    return [this.#replace(this.#before, free)]
  }

  /** Nothing to do where the comments are as they were. */
  readonly putBack = (): Part[] => {
    const now = this.#ours()
    const texts = (comments: readonly Placed[]) =>
      comments.map(({ address, content }) => `${address} ${content}`).sort()
    return areSame(texts(now), texts(this.#before)) ? [] : [this.#replace(now, this.#before)]
  }

  left(): readonly string[] {
    return []
  }

  #replace(off: readonly Placed[], on: readonly Omit<Placed, 'id'>[]): Part {
    return {
      cells: off.length + on.length,
      queue: ({ workbook }) => {
        const sheet = workbook.worksheets.getItem(this.sheet.id)
        for (const { id } of off) sheet.comments.getItem(id).delete()
        for (const { address, content } of on) sheet.comments.add(sheet.getRange(address), content)
      },
    }
  }

  /** Whether comments of ours are there, as far as they have been read. */
  hasOurs(): boolean {
    return this.#ours().length > 0
  }

  #ours(): Placed[] {
    return this.#placed().filter(({ content }) => isOurs(content))
  }

  #placed(): Placed[] {
    return this.#found.map(({ id, content, range }) => ({
      id,
      content,
      address: range.address.replace(/^.*!/, ''),
    }))
  }

  #list(): Part {
    return {
      cells: 1,
      queue: ({ workbook }) => {
        const { comments, protection } = workbook.worksheets.getItem(this.sheet.id)
        comments.load('items/id, items/content')
        protection.load('protected, options')
        this.#protection = protection
        this.#listed = comments
      },
    }
  }

  #places(): Part {
    const listed = this.#listed?.items ?? []
    return {
      cells: listed.length,
      queue: ({ workbook }) => {
        const { comments } = workbook.worksheets.getItem(this.sheet.id)
        this.#found = listed.map(({ id, content }) => {
          const range = comments.getItem(id).getLocation()
          range.load('address')
          return { id, content, range }
        })
      },
    }
  }
}

function areSame(some: readonly string[], others: readonly string[]): boolean {
  return some.length === others.length && some.every((text, index) => text === others[index])
}

const isOurs = (content: string) => content.startsWith(OURS)
