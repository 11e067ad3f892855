import { clicking } from './clicking'
import { collecting } from './collecting'
import { diagnosis } from './diagnosis'
import { drawing } from './drawing'
import { lesson } from './lesson'
import { marking } from './marking'
import { reviewing } from './reviewing'
import { size } from './size'
import { weeks } from './weeks'

/** `npm run speed`: every measurement beside its peer or limit in the same run; exit 1 where a goal is missed. */
let missed = 0
for (const measure of [marking, reviewing, drawing, diagnosis, lesson, clicking, collecting, size, weeks]) {
  const { name, lines, met } = await measure()
  if (!met) missed++
  console.log(
    [`${name}: ${met ? 'goal met' : 'GOAL MISSED'}`, ...lines.map((line) => `  ${line}`), ''].join('\n'),
  )
}
process.exit(missed === 0 ? 0 : 1)
