import { runInNewContext } from 'node:vm'
import { manifestProblems, resourcesOf } from './manifest'
import { everyElement, parseXml, type XmlElement } from './xml'

/** Reads a file of the built add-in by its name, like "assets/icon-16.png"; undefined where there is none. */
export type ReadFile = (name: string) => Buffer | undefined

/** The parts of functions.json that are checked. */
interface Metadata {
  readonly functions: readonly {
    readonly id: string
    readonly description?: string
    readonly parameters: readonly { readonly name: string; readonly description?: string }[]
  }[]
}

/** What is wrong with a built add-in, a sentence each; none where it is right. */
export function addinProblems(read: ReadFile): string[] {
  const xml = read('manifest.xml')
  if (!xml) return ['manifest.xml is missing. Run "npm run build" first.']
  let manifest: XmlElement
  try {
    manifest = parseXml(xml.toString('utf8'))
  } catch (error) {
    return [`manifest.xml is not well-formed: ${messageOf(error)}`]
  }
  return [
    ...manifestProblems(manifest),
    ...fileProblems(manifest, read),
    ...pageProblems(read),
    ...functionProblems(read),
  ]
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}

/** Every address of the manifest, with the size in pixels that its picture must have, where it is one. */
function addressesOf(manifest: XmlElement): { url: string; size: number | undefined }[] {
  const elements = everyElement(manifest)
  const valueOf = (name: string) =>
    elements.find((element) => element.name === name)?.attributes.DefaultValue ?? ''
  const sizes = elements.filter(({ attributes }) => attributes.size !== undefined)
  const sizeOf = (id: string) => sizes.find(({ attributes }) => attributes.resid === id)?.attributes.size
  return [
    { url: valueOf('IconUrl'), size: 32 },
    { url: valueOf('HighResolutionIconUrl'), size: 64 },
    { url: valueOf('SupportUrl'), size: undefined },
    { url: valueOf('SourceLocation'), size: undefined },
    ...resourcesOf(manifest)
      .filter(({ group }) => group === 'Images' || group === 'Urls')
      .map(({ group, id, value }) => ({
        url: value,
        size: group === 'Images' ? Number(sizeOf(id)) : undefined,
      })),
  ]
}

function fileProblems(manifest: XmlElement, read: ReadFile): string[] {
  const addresses = addressesOf(manifest)
  const base = addresses.find(({ url }) => url.endsWith('/taskpane.html'))?.url.replace('taskpane.html', '')
  if (base === undefined) return ['No address of the manifest ends in /taskpane.html.']
  return addresses.flatMap(({ url, size }) => {
    if (!url.startsWith(base)) return [`${url} does not begin with ${base}, where the add-in is served from.`]
    const name = url.slice(base.length)
    const content = read(name)
    if (!content) return [`${name} is named in the manifest and is not in the folder.`]
    return size === undefined ? [] : pictureProblems(name, content, size)
  })
}

const PNG_SIGNATURE = '89504e470d0a1a0a'

/** A PNG file begins with its signature, then the IHDR chunk: width at byte 16, height at byte 20 (PNG specification, 11.2.1). */
function pictureProblems(name: string, content: Buffer, size: number): string[] {
  if (content.length < 24 || content.toString('hex', 0, 8) !== PNG_SIGNATURE)
    return [`${name} is not a PNG picture.`]
  const [width, height] = [content.readUInt32BE(16), content.readUInt32BE(20)]
  return width === size && height === size
    ? []
    : [`${name} is ${width} × ${height} pixels and must be ${size} × ${size}.`]
}

const OFFICE = /^(https:\/\/appsforoffice\.microsoft\.com\/lib\/1\/hosted\/|office\/)office\.js$/

/** The page loads the client library first, then the functions and the pane; what is not Microsoft's address is in the folder. */
function pageProblems(read: ReadFile): string[] {
  const page = read('taskpane.html')?.toString('utf8')
  if (page === undefined) return ['taskpane.html is missing.']
  const scripts = Array.from(page.matchAll(/<script[^>]*\ssrc="?([^"\s>]+)/g), ([, source = '']) => source)
  return [
    ...(OFFICE.test(scripts[0] ?? '') ? [] : ['taskpane.html must load office.js before any other script.']),
    ...(scripts.includes('functions.js')
      ? []
      : ['taskpane.html must load functions.js: it is the page of the shared runtime.']),
    ...scripts
      .filter((source) => !source.startsWith('https://') && !read(source))
      .map((source) => `${source} is loaded by taskpane.html and is not in the folder.`),
  ]
}

function functionProblems(read: ReadFile): string[] {
  const [script, json] = [read('functions.js'), read('functions.json')]
  if (!script || !json) return []
  try {
    const { functions } = JSON.parse(json.toString('utf8')) as Metadata
    const described = functions.map(({ id }) => id)
    const associated = associatedBy(script.toString('utf8'))
    return [
      ...missing(described, associated).map(
        (id) => `${id} is in functions.json and functions.js does not associate it.`,
      ),
      ...missing(associated, described).map(
        (id) => `${id} is associated by functions.js and is not in functions.json.`,
      ),
      ...described
        .filter((id, index) => described.indexOf(id) < index)
        .map((id) => `${id} stands twice in functions.json.`),
      ...functions.flatMap(({ id, description, parameters }) => [
        ...(description ? [] : [`${id} has no description.`]),
        ...parameters
          .filter((one) => !one.description)
          .map(({ name }) => `${name} of ${id} has no description.`),
      ]),
    ]
  } catch (error) {
    return [`The custom functions cannot be read: ${messageOf(error)}`]
  }
}

function missing(some: readonly string[], others: readonly string[]): string[] {
  return some.filter((one) => !others.includes(one))
}

/** The ids that a script associates when it is run. */
function associatedBy(script: string): string[] {
  const ids: string[] = []
  runInNewContext(script, { CustomFunctions: { associate: (id: string) => ids.push(id) } })
  return ids
}
