/** One thing that the add-in relies on and the host must do. */
export interface Check {
  readonly name: string
  /** Rejects with a sentence where the host does otherwise. */
  readonly run: () => Promise<void>
}

/** The sheet the checks work on; it is added for each and deleted after it. */
export const SCRATCH = 'Contract check'

/** A check on a scratch sheet of its own. */
export const check = (
  name: string,
  body: (sheet: Excel.Worksheet, context: Excel.RequestContext) => Promise<void>,
): Check => ({
  name,
  run: () =>
    Excel.run(async (context) => {
      const old = context.workbook.worksheets.getItemOrNullObject(SCRATCH)
      await context.sync()
      if (!old.isNullObject) old.delete()
      const sheet = context.workbook.worksheets.add(SCRATCH)
      await context.sync()
      try {
        await body(sheet, context)
        await context.sync()
      } finally {
        await cleanUp()
      }
    }),
})

/** Deletes the scratch sheet, in a batch of its own: the check's may have failed. */
export const cleanUp = () =>
  Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(SCRATCH)
    await context.sync()
    if (!sheet.isNullObject) sheet.delete()
    await context.sync()
  })

/** Rejects unless both say the same as JSON. */
export function same(what: string, got: unknown, wanted: unknown): void {
  const [gotText, wantedText] = [JSON.stringify(got), JSON.stringify(wanted)]
  if (gotText !== wantedText) throw new Error(`${what}: got ${gotText}, not ${wantedText}`)
}

/** Rejects unless the batch fails with that code. */
export async function failsWith(code: string, batch: (context: Excel.RequestContext) => Promise<void>) {
  let got: unknown = 'no error'
  try {
    await Excel.run(async (context) => {
      await batch(context)
      await context.sync()
    })
  } catch (error) {
    got = error instanceof OfficeExtension.Error ? error.code : String(error)
  }
  same('error code', got, code)
}

/** The scratch sheet in another batch. */
export const scratch = (context: Excel.RequestContext) => context.workbook.worksheets.getItem(SCRATCH)

/** How long a check waits for something, in milliseconds: long enough for Excel on the web. */
const LIMIT = 15_000

/** Waits until `done` holds, for fifteen seconds at most. */
export async function until(what: string, done: () => boolean | Promise<boolean>): Promise<void> {
  const limit = Date.now() + LIMIT
  while (!(await done())) {
    if (Date.now() > limit) throw new Error(`${what} did not happen within ${LIMIT / 1000} seconds`)
    await new Promise((resolve) => setTimeout(resolve, 50))
  }
}
