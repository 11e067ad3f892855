/**
 * The style of printed hand-outs. Fonts are those of the reader's own system, first those whose letters children learn to write
 * (a one-storey a); the digits keep to their columns whichever it is. Colours are greys, so that a copier loses nothing.
 */
export const PRINT_STYLE = `
@page { size: A4 portrait; margin: 14mm 15mm; }
* { box-sizing: border-box; }
body { margin: 0; color: #111; line-height: 1.4;
  font-family: Andika, "Comic Neue", "Comic Sans MS", "Chalkboard SE", "Century Gothic", "Trebuchet MS", Verdana, sans-serif; }
.sheet { break-after: page; }
.sheet:last-child { break-after: auto; }
.pupil { font-size: 13pt; }
.adult { font-size: 10.5pt; }
.adult p { margin-bottom: 2mm; }
.adult h2 { margin: 3mm 0 1.5mm; }
.adult .together .bars { margin: 1mm 0; }
.set { float: right; margin: 0 0 0 6mm; font-size: 8pt; color: #555; }
h1 { font-size: 1.4em; line-height: 1.25; margin: 0 0 4mm; }
h2 { font-size: 1.1em; margin: 5mm 0 2mm; break-after: avoid; }
p { margin: 0 0 3mm; }
p, li { orphans: 3; widows: 3; }
ul, ol { margin: 0 0 3mm; padding-left: 7mm; }
li { margin-bottom: 1mm; break-inside: avoid; }
.ticks { list-style: none; padding-left: 0; break-inside: avoid; }
.ticks li { padding-left: 8mm; position: relative; }
.ticks li::before { content: ""; position: absolute; left: 0; top: 0.2em; width: 4.5mm; height: 4.5mm; border: 0.4mm solid #333; }
.fields { display: flex; gap: 8mm; break-inside: avoid; break-before: avoid; margin-top: 2mm; }
.fields span { flex: 1; display: flex; align-items: baseline; gap: 2mm; white-space: nowrap; }
.fields span::after { content: ""; flex: 1; border-bottom: 0.3mm solid #333; }
.together { break-inside: avoid; }
figure { margin: 0; break-inside: avoid; }
figcaption { margin-bottom: 1.5mm; }
figcaption b { margin-right: 3mm; }
.rooms { display: flex; flex-wrap: wrap; gap: 6mm 8mm; margin: 3mm 0; }
.rooms figure { width: 86mm; display: flex; flex-direction: column; }
.rooms figcaption { flex: 1; }
.rooms .fields { margin: 4mm 0 0; }
.rooms .written { align-self: flex-start; }
.three { gap: 4mm 5mm; }
.three figure { width: 56mm; }
.rooms figcaption + .fields { margin: 0 0 3mm; }
.workings { display: grid; grid-template-columns: repeat(4, 1fr); gap: 3mm; break-inside: avoid; }
.workings .answer { margin: 1mm 0 0; font-weight: bold; }
.workings small { display: block; font-size: 0.75em; }
.worked { display: flex; gap: 8mm; align-items: flex-start; margin-bottom: 3mm; break-inside: avoid; }
.stages figure { display: flex; gap: 8mm; align-items: flex-start; margin-bottom: 3mm; counter-increment: stage; }
.stages figure::before { content: counter(stage); font-weight: bold; width: 4mm; }
.stages div { flex: 1; font-size: 0.8em; line-height: 1.3; }
.stages p { margin: 0 0 0.8mm; }
.stages .written td { width: 6.4mm; height: 6.4mm; font-size: 12pt; }
.stages .written .mark td, .stages .written .carried td { font-size: 9pt; }
.half { min-height: 128mm; break-inside: avoid; }
.half + .half { border-top: 0.3mm dashed #777; padding-top: 5mm; }
.half h1 { font-size: 1.1em; margin-bottom: 2mm; }
.written { border-collapse: collapse; font-variant-numeric: tabular-nums; }
.written td { width: 7.5mm; height: 7.5mm; padding: 0; text-align: center; border: 0.25mm solid #999; font-size: 13pt; line-height: 1; }
.written .mark td, .written .carried td { font-size: 9pt; }
.written .heads td { border-color: transparent transparent #999; font-size: 9pt; color: #333; }
.written .boxes td:not(:first-child) { border: 0.5mm dashed #555; }
.written .answer td { border-top: 0.6mm solid #111; font-weight: bold; }
.workings .written td { width: 5.2mm; height: 5.2mm; font-size: 10pt; }
.workings .written .mark td, .workings .written .carried td { font-size: 7pt; }
s { text-decoration-thickness: 0.25mm; }
.grid { border-collapse: collapse; width: calc(100% - 1mm); margin: 4mm 0.5mm 0; table-layout: fixed; font-variant-numeric: tabular-nums; }
.grid td { border: 0.4mm solid #333; text-align: center; height: min(34mm, 184mm / var(--rows)); padding: 1mm; }
.adult .grid td { height: 14mm; font-size: min(1em, 6.6em / var(--columns)); white-space: nowrap; }
.pupil .grid td { font-size: min(1.3em, 8.4em / var(--columns)); }
.grid tr { break-inside: avoid; }
.grid small { display: block; font-size: 0.75em; }
.triangles { display: flex; flex-wrap: wrap; gap: 8mm 4mm; }
.triangles figure { width: 88mm; }
.triangles figure:only-child, .triangles figure:only-child svg { width: 130mm; height: auto; }
.bars { display: flex; gap: 8mm; margin: 2mm 0; }
.bars figure { width: 86mm; }
.squares { fill: none; stroke: #888; stroke-width: 0.25; }
.ring { fill: #fff; stroke: #222; stroke-width: 0.5; }
svg .line { fill: none; stroke: #888; stroke-width: 0.5; }
.bar { fill: #f4f4f4; stroke: #222; stroke-width: 0.4; }
.difference { fill: none; stroke: #222; stroke-width: 0.4; stroke-dasharray: 1.5 1; }
svg text { font-size: 4.2px; text-anchor: middle; font-variant-numeric: tabular-nums; }
svg .number { font-size: 6.5px; }
svg .total { font-size: 8px; font-weight: bold; }
svg .label { font-size: 3.3px; text-anchor: start; }
svg .end { text-anchor: end; }
`
