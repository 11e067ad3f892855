import { perform, type Done, type Edit } from '../edit/edit'
import { Problem, problemOf, protectedSheet } from '../edit/errors'
import { UNWATCHED, type Part, type Work } from '../edit/work'

/** A picture to put on a sheet: a PNG in base64, its size in points, and what it shows, for readers who hear it. */
export interface Picture {
  readonly base64: string
  readonly width: number
  readonly height: number
  readonly name: string
  readonly altText: string
}

/** Puts a picture over the sheet in front, its upper left corner at the selected cell. No cell is changed. Throws Problem. */
export async function insertPicture(picture: Picture, work: Work = UNWATCHED): Promise<Done> {
  if (!Office.context.requirements.isSetSupported('ExcelApi', '1.10'))
    throw new Problem(
      'This version of Excel cannot take a picture from Columnwise.',
      'Insert the layout into cells, or update Excel.',
    )
  return perform('picture of the model', [pictureEdit(picture, await cornerSelected())], work)
}

/** Where the selected cell begins, in points. */
interface Corner {
  readonly sheetId: string
  readonly left: number
  readonly top: number
}

async function cornerSelected(): Promise<Corner> {
  try {
    return await Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getActiveWorksheet()
      const cell = context.workbook.getActiveCell()
      const { protection } = sheet
      sheet.load('id, name')
      protection.load('protected, options')
      cell.load('left, top')
      await context.sync()
      const { protected: isProtected, options } = protection
      if (isProtected && options.allowEditObjects !== true) throw protectedSheet(sheet.name)
      return { sheetId: sheet.id, left: cell.left, top: cell.top }
    })
  } catch (error) {
    throw problemOf(error)
  }
}

function pictureEdit(picture: Picture, corner: Corner): Edit {
  const placed = new Placed(picture, corner)
  return {
    what: 'the picture of the model',
    keep: [() => [placed.look()]],
    check: () => {
      placed.keep()
    },
    write: () => [placed.add()],
    look: [() => [placed.look()]],
    putBack: () => placed.remove(),
    left: () => [],
  }
}

/** A picture on a sheet, found again as one of its name that was not there before. */
class Placed {
  #before: ReadonlySet<string> = new Set()
  #present: Excel.ShapeCollection | undefined

  constructor(
    private readonly picture: Picture,
    private readonly corner: Corner,
  ) {}

  keep(): void {
    this.#before = new Set(this.#items().map(({ id }) => id))
  }

  add(): Part {
    const { base64, name, altText, width, height } = this.picture
    return this.#part((shapes) => {
      const shape = shapes.addImage(base64)
      shape.name = name
      shape.altTextDescription = altText
      shape.lockAspectRatio = false
      shape.left = this.corner.left
      shape.top = this.corner.top
      shape.width = width
      shape.height = height
      shape.lockAspectRatio = true
    })
  }

  look(): Part {
    return this.#part((shapes) => {
      shapes.load('items/id, items/name')
      this.#present = shapes
    })
  }

  /** Nothing to do where the teacher has deleted it. */
  remove(): Part[] {
    const added = this.#items().filter(({ id, name }) => name === this.picture.name && !this.#before.has(id))
    return added.map(({ id }) =>
      this.#part((shapes) => {
        shapes.getItem(id).delete()
      }),
    )
  }

  #items(): readonly Excel.Shape[] {
    return this.#present?.items ?? []
  }

  #part(queue: (shapes: Excel.ShapeCollection) => void): Part {
    return {
      cells: 1,
      queue: (context) => {
        queue(context.workbook.worksheets.getItem(this.corner.sheetId).shapes)
      },
    }
  }
}
