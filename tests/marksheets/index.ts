import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { matrixOf } from '../../src/files/matrix'
import { readWorkbook } from '../../src/files/xlsx/workbook'
import type { Matrix } from '../../src/marksheet/layout/matrix'

/** The workbooks of four invented classes, each with what is expected of it in NAME.expected.json. */
export const WORKBOOKS = ['kestrel-plain', 'heron-notes', 'wren-across', 'form-responses'] as const

export type WorkbookName = (typeof WORKBOOKS)[number]

/** What is expected of a marksheet. `received` are the columns, from the right as written, that receive a ten. */
export interface Expected {
  readonly sheet: string
  readonly orientation: string
  readonly questions: readonly {
    readonly cell: string
    readonly text: string
    readonly answer: string
    readonly received: readonly number[]
    readonly zerosCrossed: number
  }[]
  readonly pupils: readonly {
    readonly nameCell: string
    readonly name: string
    readonly truth: { readonly kind: string; readonly fault: string | null; readonly visibleOn?: number }
    readonly answers: readonly { readonly cell: string; readonly typed: string; readonly outcome: string }[]
  }[]
}

/** The path of a file beside this one. */
export function pathOf(file: string): string {
  return fileURLToPath(new URL(file, import.meta.url))
}

export function bytesOf(name: WorkbookName): Uint8Array {
  return readFileSync(pathOf(`${name}.xlsx`))
}

export function expectedOf(name: WorkbookName): Expected {
  return JSON.parse(readFileSync(pathOf(`${name}.expected.json`), 'utf8')) as Expected
}

/** All sheets of a workbook's bytes. */
export async function matricesOf(bytes: Uint8Array): Promise<Matrix[]> {
  return (await readWorkbook(bytes)).map((sheet) => matrixOf(sheet).matrix)
}
