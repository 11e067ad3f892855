import path from 'node:path'
import webpack from 'webpack'
import { benchConfig } from '../../src/bench/webpack'

/** Builds the bench into a folder of the cache that no one else builds into; gives the folder. */
export function buildBench(name: string): Promise<string> {
  const folder = path.resolve('.cache', `bench-${name}`)
  return new Promise((resolve, reject) => {
    const compiler = webpack(benchConfig({ folder }))
    compiler?.run((error, stats) => {
      compiler.close(() => {
        if (error) reject(error)
        else if (stats?.hasErrors()) reject(new Error(stats.toString({ preset: 'errors-only' })))
        else resolve(folder)
      })
    })
  })
}
