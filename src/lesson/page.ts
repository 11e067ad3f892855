import {
  barDrawing,
  barInWords,
  printedDrawing,
  squaredPaper,
  triangleDrawing,
  triangleInWords,
  writtenLines,
  writtenWorking,
} from './drawings'
import { escapeText } from './escape'
import type { Block, GridCell, Handout, Sheet, Working } from './handout'
import { PRINT_STYLE } from './printStyle'

/**
 * A hand-out as one HTML page to print on A4, complete in itself: no script, nothing from outside, every text escaped. Each sheet
 * starts a new page; questions, drawings and headings with what follows are not torn apart.
 */
export function printablePage({ title, set, sheets }: Handout): string {
  return [
    '<!doctype html>',
    '<html lang="en-GB">',
    '<head>',
    '<meta charset="utf-8">',
    `<title>${escapeText(title)}</title>`,
    `<style>${PRINT_STYLE}</style>`,
    '</head>',
    '<body>',
    ...sheets.map((sheet) => sheetSection(sheet, sheet.set ?? set)),
    '</body>',
    '</html>',
    '',
  ].join('\n')
}

function sheetSection({ title, reader, blocks }: Sheet, set: string): string {
  // Each half that is cut off has the set number.
  const isCut = blocks.some(({ kind }) => kind === 'halves')
  return [
    `<section class="sheet ${reader}">`,
    ...(isCut ? [] : [setNumber(set)]),
    ...(title === '' ? [] : [`<h1>${escapeText(title)}</h1>`]),
    ...blocks.map((block) => blockHtml(block, set)),
    '</section>',
  ].join('\n')
}

function setNumber(set: string): string {
  return set === '' ? '' : `<p class="set">Set ${escapeText(set)}</p>`
}

function blockHtml(block: Block, set: string): string {
  // The heading of a half is that of a sheet of its own.
  const inHalf = (each: Block) =>
    each.kind === 'heading' ? `<h1>${escapeText(each.text)}</h1>` : blockHtml(each, set)
  switch (block.kind) {
    case 'heading':
      return `<h2>${escapeText(block.text)}</h2>`
    case 'text':
      return `<p>${escapeText(block.text)}</p>`
    case 'fields':
      return fields(block.names)
    case 'list':
    case 'ticks':
      return `<ul class="${block.kind}">${block.items.map((item) => `<li>${escapeText(item)}</li>`).join('')}</ul>`
    case 'rooms':
      return figures(
        block.across === 3 ? 'rooms three' : 'rooms',
        block.rooms,
        ({ label, text, columns, rows, above, line, given }) =>
          caption(label, text) +
          (above === '' ? '' : fields([above])) +
          (given ? writtenLines(given) : squaredPaper(columns, rows)) +
          (line === '' ? '' : fields([line])),
      )
    case 'worked':
      return `<div class="worked">${writtenWorking(block.working.paper)}</div>`
    case 'stages':
      return figures('stages', block.stages, ({ paper, says }) => writtenWorking(paper) + sentences(says))
    case 'workings':
      return figures('workings', block.workings, workingHtml)
    case 'grid':
      return `<table class="grid" style="--rows:${block.rows.length};--columns:${block.rows[0]?.length ?? 1}">${block.rows.map(gridRow).join('')}</table>`
    case 'triangles':
      return figures(
        'triangles',
        block.triangles,
        ({ label, total, numbers }) =>
          caption(label, '') +
          printedDrawing(triangleDrawing(total, numbers), triangleInWords(total, numbers)),
      )
    case 'bars':
      return figures('bars', block.bars, (bar) =>
        printedDrawing(barDrawing(bar, block.shown), barInWords(bar, block.shown)),
      )
    case 'together':
      return `<div class="together">${block.blocks.map((each) => blockHtml(each, set)).join('\n')}</div>`
    case 'halves':
      return block.halves
        .map((half) => `<div class="half">${[setNumber(set), ...half.map(inHalf)].join('\n')}</div>`)
        .join('\n')
  }
}

function fields(names: readonly string[]): string {
  return `<p class="fields">${names.map((name) => `<span>${escapeText(name)}</span>`).join('')}</p>`
}

function figures<T>(style: string, items: readonly T[], inner: (item: T) => string): string {
  return `<div class="${style}">${items.map((item) => `<figure>${inner(item)}</figure>`).join('')}</div>`
}

function caption(label: string, text: string): string {
  if (label === '' && text === '') return ''
  const number = label === '' ? '' : `<b>${escapeText(label)}</b>`
  return `<figcaption>${number}${escapeText(text)}</figcaption>`
}

function workingHtml({ label, text, paper, answer, notes }: Working): string {
  const told = notes.map((note) => `<small>${escapeText(note)}</small>`).join('')
  return `${caption(label, text)}${writtenWorking(paper)}<p class="answer">${escapeText(answer)}</p>${told}`
}

function sentences(says: readonly string[]): string {
  return `<div>${says.map((say) => `<p>${escapeText(say)}</p>`).join('')}</div>`
}

function gridRow(cells: readonly GridCell[]): string {
  const inner = cells.map(
    ({ text, note }) =>
      `<td>${escapeText(text)}${note === '' ? '' : `<small>${escapeText(note)}</small>`}</td>`,
  )
  return `<tr>${inner.join('')}</tr>`
}
