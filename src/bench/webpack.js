import CopyPlugin from 'copy-webpack-plugin'
import { createRequire } from 'node:module'
import path from 'node:path'
import { fileURLToPath } from 'node:url'

const here = path.dirname(fileURLToPath(import.meta.url))
const root = path.join(here, '../..')
const office = path.dirname(createRequire(import.meta.url).resolve('@microsoft/office-js/dist/office.js'))

/** The files of Microsoft's client library that a desktop Excel in English loads, and its licence. */
const OFFICE_FILES = ['office.js', 'excel-win32-16.01.js', 'en-us/office_strings.js', '../LICENSE.md']

/**
 * The webpack configuration of the bench, built apart from the add-in, into dist-bench/ unless another folder is named. It
 * is not minified: it is served on this computer only, and building it often should be fast.
 */
export function benchConfig({ mode = 'production', folder = path.join(root, 'dist-bench') } = {}) {
  return {
    name: 'bench',
    mode,
    target: 'web',
    devtool: mode === 'production' ? false : 'source-map',
    entry: { bench: path.join(here, 'page/bench.ts'), contract: path.join(here, 'page/contract.ts') },
    output: {
      path: folder,
      filename: '[name].js',
      chunkFilename: '[name].js',
      clean: true,
    },
    resolve: { extensions: ['.ts', '.tsx', '.js'] },
    experiments: { topLevelAwait: true },
    optimization: { minimize: false },
    cache: {
      type: 'filesystem',
      cacheDirectory: path.join(root, '.cache/bench'),
      name: path.basename(folder),
    },
    performance: { hints: false },
    module: {
      rules: [
        {
          test: /\.tsx?$/,
          use: {
            loader: 'ts-loader',
            options: {
              transpileOnly: true,
              compilerOptions: { noEmit: false, sourceMap: mode !== 'production' },
            },
          },
        },
        { test: /\.css$/, use: ['style-loader', 'css-loader'] },
      ],
    },
    plugins: [
      new CopyPlugin({
        patterns: [
          { from: path.join(here, 'page/bench.html'), to: 'index.html', info: { minimized: true } },
          { from: path.join(here, 'page/bench.css') },
          ...OFFICE_FILES.map((file) => ({
            from: path.join(office, file),
            to: path.join('office', file.replace('../', '')),
            info: { minimized: true },
          })),
        ],
      }),
    ],
  }
}

export default benchConfig()
