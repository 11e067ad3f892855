import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { homedir } from 'node:os'
import path from 'node:path'
import CopyPlugin from 'copy-webpack-plugin'
import webpack from 'webpack'
import { functionsMetadata } from './src/functions/metadata.js'

const DEFAULT_BASE = 'https://localhost:3000/'
const HOSTED_OFFICE = 'https://appsforoffice.microsoft.com/lib/1/hosted/'
const LOCAL_OFFICE = 'office/'
/** Where the pages' policy names the origin of Microsoft's client library. */
const HOSTED_ORIGIN = ` ${new URL(HOSTED_OFFICE).origin};`
/** The largest script, before it is compressed; the tests hold what the pane loads at its start to 200 kB gzipped. */
const MOST_BYTES = 600_000
/** Keeps webpack from minimising a copied file. */
const UNTOUCHED = { minimized: true }
const FUNCTIONS = path.resolve('src/functions/functions.ts')

/** JSZip from its sources in place of its one bundled script, so that of its parts `setimmediate` can be replaced and Node's streams left out. */
const FROM_JSZIP = [
  { test: path.resolve('src/files/xlsx/package.ts'), resolve: { aliasFields: [] } },
  {
    test: path.resolve('node_modules/jszip') + path.sep,
    resolve: {
      aliasFields: [],
      alias: { setimmediate: path.resolve('taskpane/common/setImmediate.ts'), 'readable-stream': false },
    },
  },
]

/** Writes functions.json from the doc comments of the custom functions. */
class FunctionsJson {
  apply(compiler) {
    const { Compilation, WebpackError, sources } = webpack
    compiler.hooks.thisCompilation.tap('FunctionsJson', (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL
      compilation.hooks.processAssets.tapPromise({ name: 'FunctionsJson', stage }, async () => {
        compilation.fileDependencies.add(FUNCTIONS)
        const { json, errors } = await functionsMetadata(FUNCTIONS)
        compilation.errors.push(...errors.map((error) => new WebpackError(error)))
        compilation.emitAsset('functions.json', new sources.RawSource(json))
      })
    })
  }
}

/** Writes THIRD-PARTY-NOTICES.txt: every package of which code is in the scripts, with its licence. */
class Notices {
  apply(compiler) {
    const { Compilation, sources } = webpack
    compiler.hooks.thisCompilation.tap('Notices', (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_REPORT
      compilation.hooks.processAssets.tap({ name: 'Notices', stage }, () => {
        const folders = new Set([...filesOf(compilation.modules)].flatMap(packageOf))
        const text = noticesOf([...folders, 'node_modules/webpack'].sort())
        compilation.emitAsset('THIRD-PARTY-NOTICES.txt', new sources.RawSource(text))
      })
    })
  }
}

/** The files that modules were made from; those put together into one module too. */
function* filesOf(modules) {
  for (const { modules: parts, resource } of modules) {
    if (parts) yield* filesOf(parts)
    else if (resource) yield resource
  }
}

/** The folder of the package that a file belongs to, in a list; an empty one for a file of our own. */
function packageOf(file) {
  const [folder] =
    /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path.relative('.', file).replaceAll('\\', '/')) ?? []
  return folder === undefined ? [] : [folder]
}

function noticesOf(folders) {
  const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8'))
  const notices = folders.map((folder) => {
    const { version, license } = packages[folder]
    const texts = readdirSync(folder)
      .filter((name) => /^(?:licen[cs]e|notice|copying)/i.test(name))
      .map((name) => readFileSync(path.join(folder, name), 'utf8').trim())
    const own = texts.length > 0 ? texts : [termsOf(folder, license)]
    return [`${folder.replace(/^.*node_modules\//, '')} ${version}, ${license}`, ...own].join('\n\n')
  })
  return [
    'Columnwise is under the MIT licence. Its scripts hold code of the packages below, each under its own.',
    "Microsoft's client library (office.js) is not among them: it is loaded from Microsoft's own address, or lies in the folder office",
    'with its licence, unmodified.',
    ...notices.map((notice) => `${'-'.repeat(80)}\n${notice}`),
    '',
  ].join('\n\n')
}

/** The terms of a package that comes without their text. Throws Error where they are not the MIT licence's, which ours are too. */
function termsOf(folder, license) {
  if (license !== 'MIT') throw new Error(`${folder} comes without the text of its licence, ${license}.`)
  const { repository } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'))
  const terms = readFileSync('LICENSE', 'utf8').replace(/^[^]*?(?=Permission is)/, '')
  return `Copyright (c) the authors of ${repository.url}\n\n${terms.trim()}`
}

/** The address that the add-in is served from, with a slash at its end. Excel loads add-ins from https only. */
function baseOf({ base = DEFAULT_BASE }) {
  if (!URL.canParse(base) || !base.startsWith('https://'))
    throw new Error(`--env base=${base}: the address must begin with https://, like ${DEFAULT_BASE}`)
  return base.endsWith('/') ? base : `${base}/`
}

/** Where the pages find Microsoft's client library: its own address, or a copy of the npm package for closed networks. */
function officeOf({ officejs = 'hosted' }) {
  if (officejs !== 'hosted' && officejs !== 'local')
    throw new Error(`--env officejs=${officejs}: choose hosted (the default) or local`)
  return officejs === 'local' ? LOCAL_OFFICE : HOSTED_OFFICE
}

/** Whether the pane has the host checks too, behind a button at its foot. */
function hasChecks({ checks = 'no' }) {
  return isChosen('checks', checks)
}

const CHECKS_SCRIPT = '<script src="host-checks.js" defer></script>'

/** Whether the pages bring their policy, which says what they may load; without, where the client library asks for more hosts one day. */
function hasPolicy({ policy = 'yes' }) {
  return isChosen('policy', policy)
}

const POLICY = /\s*<meta\s+http-equiv="Content-Security-Policy"[^>]*>/

function isChosen(flag, answer) {
  if (answer !== 'yes' && answer !== 'no') throw new Error(`--env ${flag}=${answer}: choose yes or no`)
  return answer === 'yes'
}

/** How a page of the add-in is changed for a build: `(text, file) => text`. */
export function pageFor(env) {
  const office = officeOf(env)
  return (content, file) => {
    let text = content.toString().replaceAll(HOSTED_OFFICE, office)
    if (office === LOCAL_OFFICE) text = text.replace(HOSTED_ORIGIN, ';')
    if (!hasPolicy(env)) text = text.replace(POLICY, '')
    const isPane = path.basename(file) === 'taskpane.html'
    return hasChecks(env) && isPane ? text.replace('</head>', `  ${CHECKS_SCRIPT}\n  </head>`) : text
  }
}

/** The files of the client library that Excel loads, unmodified, with their licence. */
function officeFiles() {
  const library = path.dirname(createRequire(import.meta.url).resolve('@microsoft/office-js/package.json'))
  const dist = path.join(library, 'dist')
  const names = [
    '{office,o15apptofilemappingtable}.js',
    'excel-*-16.0[01].js',
    '*/office_strings.js',
    '{telemetry,ariatelemetry,webauth}/*.js',
  ]
  return [
    { from: path.join(library, 'LICENSE.md'), to: LOCAL_OFFICE },
    ...names.map((name) => ({
      context: dist,
      from: name,
      to: `${LOCAL_OFFICE}[path][name][ext]`,
      globOptions: { ignore: ['**/*.debug.js'] },
      info: UNTOUCHED,
    })),
  ]
}

function copies(env) {
  const base = baseOf(env)
  const office = officeOf(env)
  const manifest = (content) =>
    content
      .toString()
      .replaceAll(DEFAULT_BASE, base)
      .replaceAll(new URL(DEFAULT_BASE).origin, new URL(base).origin)
  return new CopyPlugin({
    patterns: [
      { from: 'manifest.xml', transform: manifest },
      {
        from: 'taskpane/{taskpane,handout,projector,privacy}.html',
        to: '[name][ext]',
        transform: pageFor(env),
        info: UNTOUCHED,
      },
      { from: 'taskpane/assets/*.png', to: 'assets/[name][ext]' },
      { from: 'taskpane/server', globOptions: { dot: true }, info: UNTOUCHED },
      ...(office === LOCAL_OFFICE ? officeFiles() : []),
    ],
  })
}

/** https with the developer certificates where they are installed, http otherwise. */
function serverOf(logger) {
  const folder = path.join(homedir(), '.office-addin-dev-certs')
  const files = { key: 'localhost.key', cert: 'localhost.crt', ca: 'ca.crt' }
  const paths = Object.entries(files).map(([option, name]) => [option, path.join(folder, name)])
  if (paths.every(([, file]) => existsSync(file)))
    return {
      type: 'https',
      options: Object.fromEntries(paths.map(([option, file]) => [option, readFileSync(file)])),
    }
  logger.warn('No developer certificates: serving http, which Excel does not open.')
  logger.warn('To install them: npx office-addin-dev-certs install')
  return { type: 'http' }
}

export default (env, { mode }) => ({
  mode,
  target: ['web', 'es2022'],
  cache: {
    type: 'filesystem',
    cacheDirectory: path.resolve('.cache/addin'),
    buildDependencies: { config: [import.meta.filename] },
  },
  devtool: mode === 'production' ? false : 'source-map',
  entry: {
    commands: './taskpane/commands.ts',
    taskpane: './taskpane/index.tsx',
    projector: './taskpane/projector.tsx',
    handout: './taskpane/handout.ts',
    functions: './src/functions/index.ts',
    ...(hasChecks(env) && { 'host-checks': './src/bench/page/hostChecks.ts' }),
  },
  output: { path: path.resolve('dist'), filename: '[name].js', chunkFilename: '[name].js', clean: true },
  resolve: { extensions: ['.ts', '.tsx', '.js'] },
  module: {
    rules: [
      {
        test: /\.tsx?$/,
        exclude: /node_modules/,
        loader: 'ts-loader',
        options: { transpileOnly: true, compilerOptions: { noEmit: false } },
      },
      ...FROM_JSZIP,
      { test: /\.css$/, use: ['style-loader', 'css-loader'] },
    ],
  },
  plugins: [new FunctionsJson(), new Notices(), copies(env)],
  performance: {
    maxAssetSize: MOST_BYTES,
    maxEntrypointSize: MOST_BYTES,
    assetFilter: (name) => name.endsWith('.js') && !name.startsWith(LOCAL_OFFICE),
  },
  devServer: {
    host: 'localhost',
    port: 3000,
    hot: false,
    static: false,
    headers: { 'Access-Control-Allow-Origin': '*' },
    ...(env.WEBPACK_SERVE && { server: serverOf(console) }),
  },
})
