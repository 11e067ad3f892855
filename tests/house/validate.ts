import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { addinProblems } from './addin'

/** Checks a folder with the built add-in: `validate.ts [FOLDER]`. Exit code 1 and a sentence for each thing that is wrong. */
const [folder = 'dist'] = process.argv.slice(2)
const problems = addinProblems((name) => {
  const file = path.join(folder, name)
  return existsSync(file) ? readFileSync(file) : undefined
})

for (const problem of problems) console.error(problem)
if (problems.length === 0) console.log(`${folder}: the manifest and the files that it names are valid.`)
process.exitCode = problems.length === 0 ? 0 : 1
