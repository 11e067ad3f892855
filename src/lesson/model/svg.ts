import type { Drawing, Shape } from './drawing'

/** Ink on white, whatever the colours of the screen: for pictures in a sheet, which are printed. */
const STYLE = `
text{font-family:'Segoe UI',system-ui,sans-serif;text-anchor:middle;dominant-baseline:central;fill:#1a1a1a}
.sheet{fill:#fff}.current{fill:none}.square{stroke:#b9d0e4;stroke-width:1}
.head{font-size:14px;fill:#595959}.digit,.sign{font-size:28px}.tight{font-size:19px}
.mark{font-size:20px}.ten{font-size:15px}.carried{font-size:17px}.mark,.ten,.carried{fill:#143d5e}
.cross{stroke:#8a4300;stroke-width:2.5}.rule{stroke:#1a1a1a;stroke-width:2.5}.point{fill:#1a1a1a}`

/** A drawing as an SVG file of its own, `scale` pixels to a unit. */
export function svgFile({ width, height, shapes }: Drawing, scale = 1): string {
  const size = `width="${width * scale}" height="${height * scale}" viewBox="0 0 ${width} ${height}"`
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size}><style>${STYLE}</style>${shapes.map(element).join('')}</svg>`
}

function element(shape: Shape): string {
  const { shape: name, kind, ...rest } = shape
  const content = 'text' in rest ? rest.text : ''
  const numbers = Object.entries(rest).filter(([key]) => key !== 'text')
  const attributes = numbers.map(([key, value]) => ` ${key}="${value}"`).join('')
  return `<${name} class="${kind}"${attributes}>${content}</${name}>`
}
