import type { Part, Piece } from './work'

/** Gives the conditional formats of a sheet. */
export type FormatsOf = (context: Excel.RequestContext) => Excel.ConditionalFormatCollection

/**
 * Lists the conditional formats of a sheet. Excel cannot read some of them (made or duplicated in its rules manager, or brought back by
 * Ctrl+Z), and then none that are asked for together with them: they are asked for apart, and those counted.
 */
export class FormatList {
  /** How many cannot be read. */
  unreadable = 0
  #together: Excel.ConditionalFormatCollection | undefined
  #apart: ReadonlyMap<number, Excel.ConditionalFormat> | undefined

  constructor(private readonly formatsOf: FormatsOf) {}

  readonly part: Part & Required<Pick<Part, 'apart'>> = {
    cells: 1,
    queue: (context) => {
      this.unreadable = 0
      this.#apart = undefined
      this.#together = this.formatsOf(context)
      this.#together.load('items/id, items/type')
    },
    apart: async () => {
      const found = new Map<number, Excel.ConditionalFormat>()
      this.#apart = found
      return Array.from({ length: await this.#count() }, (_, index) => this.#piece(index, found))
    },
  }

  /** The ids of those by formula that can be read. */
  customIds(): string[] {
    const formats = this.#apart ? [...this.#apart.values()] : (this.#together?.items ?? [])
    return formats.filter(({ type }) => type === 'Custom').map(({ id }) => id)
  }

  #piece(index: number, found: Map<number, Excel.ConditionalFormat>): Piece {
    return {
      cells: 1,
      queue: (context) => {
        const format = this.formatsOf(context).getItemAt(index)
        format.load('id, type')
        found.set(index, format)
      },
      missed: () => {
        found.delete(index)
        this.unreadable++
      },
    }
  }

  async #count(): Promise<number> {
    const { value } = await Excel.run(async (context) => {
      const count = this.formatsOf(context).getCount()
      await context.sync()
      return count
    })
    return value
  }
}
