import { existsSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { serveBench } from './server'

const PORT = 3100
const root = path.join(path.dirname(fileURLToPath(import.meta.url)), '../..')
const folders = { addin: path.join(root, 'dist'), bench: path.join(root, 'dist-bench') }

if (existsSync(path.join(folders.bench, 'index.html'))) {
  // Another program may have the usual port; any free one serves as well.
  const { url } = await serveBench(folders, PORT).catch(() => serveBench(folders))
  console.log(`The bench is at ${url} (stop it with Ctrl+C).`)
} else {
  console.error('The bench has not been built yet: there is no dist-bench/index.html.')
  process.exitCode = 1
}
