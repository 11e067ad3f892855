import type { Bench } from '../bench'

/** Elements of the page that opening and saving need. */
export interface FileElements {
  readonly open: HTMLInputElement
  readonly save: HTMLButtonElement
  readonly name: HTMLElement
  readonly status: HTMLElement
  readonly lossDialog: HTMLDialogElement
  readonly lossText: HTMLElement
}

/** Opens and saves .xlsx files; the library for it is loaded when it is first needed. */
export class FileButtons {
  #lost: readonly string[] = []

  constructor(
    readonly bench: Bench,
    readonly elements: FileElements,
    /** Called when another workbook has been opened. */
    readonly opened: () => void,
  ) {
    const { open, save } = elements
    open.addEventListener('change', () => {
      const [file] = open.files ?? []
      if (file) void this.open(file)
      open.value = ''
    })
    save.addEventListener('click', () => void this.save())
  }

  /** Opens a file in the place of the workbook; what cannot be read leaves everything as it was. */
  async open(file: File): Promise<void> {
    const { name, status } = this.elements
    status.textContent = `Opening ${file.name} …`
    try {
      const { readXlsx, showWorkbook, lostBySaving } = await import('../files')
      const bytes = await file.arrayBuffer()
      const workbook = await readXlsx(bytes)
      this.#lost = await lostBySaving(bytes)
      showWorkbook(this.bench, workbook)
      this.bench.book.name = file.name
      name.textContent = file.name
      status.textContent =
        this.#lost.length > 0 ? `Opened. Not shown here: ${this.#lost.join(', ')}.` : 'Opened.'
      this.opened()
    } catch (error) {
      status.textContent = error instanceof Error ? error.message : String(error)
    }
  }

  /** Saves the workbook as a download, after asking where something of the opened file would be lost. */
  async save(): Promise<void> {
    const { status } = this.elements
    if (this.#lost.length > 0 && !(await this.#agreesToLoss())) {
      status.textContent = 'Not saved.'
      return
    }
    try {
      const { saveXlsx } = await import('../files')
      const bytes = await saveXlsx(this.bench)
      const link = document.createElement('a')
      link.href = URL.createObjectURL(new Blob([bytes]))
      link.download = this.bench.book.name
      link.click()
      URL.revokeObjectURL(link.href)
      status.textContent = `Saved as ${this.bench.book.name}.`
    } catch (error) {
      status.textContent = `Not saved: ${error instanceof Error ? error.message : String(error)}`
    }
  }

  #agreesToLoss(): Promise<boolean> {
    const { lossDialog, lossText } = this.elements
    lossText.textContent = `The file that you opened has ${this.#lost.join(', ')}. The copy saved here will not.`
    lossDialog.returnValue = 'cancel'
    lossDialog.showModal()
    return new Promise((resolve) => {
      lossDialog.addEventListener(
        'close',
        () => {
          resolve(lossDialog.returnValue === 'save')
        },
        { once: true },
      )
    })
  }
}
