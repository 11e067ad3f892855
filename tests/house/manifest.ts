import {
  childrenOf,
  ELEMENT_VALUES,
  ICON_SIZES,
  LONGEST_RESID,
  namespaceOf,
  RESOURCE_GROUP,
  RESOURCE_VALUES,
  type Occurrence,
} from './schema'
import { elementsAt, everyElement, type XmlElement } from './xml'

/** A resource of the manifest: the group that it stands in, its id and its value. */
export interface Resource {
  readonly group: string
  readonly id: string
  readonly value: string
}

const OVERRIDES = 'VersionOverrides'

/** The resources of a manifest. */
export function resourcesOf(manifest: XmlElement): Resource[] {
  return elementsAt(manifest, [OVERRIDES, 'Resources'])
    .flatMap(({ children }) => children)
    .flatMap((group) =>
      group.children.map(({ attributes }) => ({
        group: group.name,
        id: attributes.id ?? '',
        value: attributes.DefaultValue ?? '',
      })),
    )
}

/** What is wrong with a manifest by itself, a sentence each: elements, values, resources and the shared runtime. */
export function manifestProblems(manifest: XmlElement): string[] {
  if (manifest.name !== 'OfficeApp' || manifest.type !== 'TaskPaneApp')
    return ['The manifest must be an OfficeApp element of xsi:type TaskPaneApp.']
  return [
    ...elementProblems(manifest, 'OfficeApp', false),
    ...valueProblems(manifest),
    ...resourceProblems(manifest),
    ...iconProblems(manifest),
    ...runtimeProblems(manifest),
  ]
}

function elementProblems(element: XmlElement, path: string, isInOverrides: boolean): string[] {
  const inOverrides = isInOverrides || element.name === OVERRIDES
  const namespace = namespaceOf(element.name, inOverrides)
  const children = childrenOf(element.name, element.type)
  return [
    ...(element.namespace === namespace ? [] : [`${path} must be in the namespace ${namespace}.`]),
    ...(children
      ? sequenceProblems(element.children, children, path)
      : [`${path} has the unknown xsi:type "${element.type ?? ''}".`]),
    ...element.children.flatMap((child) => elementProblems(child, `${path}/${child.name}`, inOverrides)),
  ]
}

function sequenceProblems(
  children: readonly XmlElement[],
  allowed: readonly Occurrence[],
  path: string,
): string[] {
  const names = children.map(({ name }) => name)
  const order = allowed.map(({ name }) => name)
  const unknown = names.filter((name) => !order.includes(name))
  const late = names.find(
    (name, index) => index > 0 && order.indexOf(name) < order.indexOf(names[index - 1] ?? name),
  )
  const count = (name: string) => names.filter((other) => other === name).length
  return [
    ...unknown.map((name) => `${path} cannot hold ${name}.`),
    ...(unknown.length === 0 && late !== undefined
      ? [`${path}/${late} comes too late: the order is ${order.join(', ')}.`]
      : []),
    ...allowed
      .filter(({ name, least }) => count(name) < least)
      .map(({ name }) => `${path} must hold ${name}.`),
    ...allowed
      .filter(({ name, most }) => count(name) > most)
      .map(({ name }) => `${path} holds ${name} more than once.`),
  ]
}

function valueProblems(manifest: XmlElement): string[] {
  const elements = everyElement(manifest)
    .filter(({ attributes }) => attributes.resid === undefined)
    .map(({ name, text, attributes }) => ({
      name,
      rule: ELEMENT_VALUES[name],
      value: attributes.DefaultValue ?? text,
    }))
  const resources = resourcesOf(manifest).map(({ group, id, value }) => ({
    name: `The resource ${id}`,
    rule: RESOURCE_VALUES[group],
    value,
  }))
  return [...elements, ...resources].flatMap(({ name, rule, value }) =>
    rule === undefined || rule.pattern.test(value) ? [] : [`${name} must be ${rule.rule}, not "${value}".`],
  )
}

function resourceProblems(manifest: XmlElement): string[] {
  const resources = resourcesOf(manifest)
  const uses = everyElement(manifest).flatMap(({ name, attributes }) =>
    attributes.resid === undefined ? [] : [{ name, resid: attributes.resid, group: RESOURCE_GROUP[name] }],
  )
  const ids = resources.map(({ id }) => id)
  return [
    ...ids.filter((id, index) => ids.indexOf(id) < index).map((id) => `The resource ${id} is defined twice.`),
    ...ids
      .filter((id) => id.length > LONGEST_RESID)
      .map((id) => `The resource id ${id} has more than ${LONGEST_RESID} characters.`),
    ...ids
      .filter((id) => uses.every(({ resid }) => resid !== id))
      .map((id) => `The resource ${id} is never used.`),
    ...uses
      .filter(
        ({ resid, group }) =>
          !resources.some((resource) => resource.id === resid && resource.group === group),
      )
      .map(
        ({ name, resid, group }) =>
          `${name} points to ${resid}, which is not defined under ${group ?? 'Resources'}.`,
      ),
  ]
}

function iconProblems(manifest: XmlElement): string[] {
  return everyElement(manifest)
    .filter(({ name }) => name === 'Icon')
    .flatMap(({ children }) =>
      ICON_SIZES.filter((size) => children.every(({ attributes }) => attributes.size !== size)),
    )
    .map((size) => `An Icon has no image of size ${size}.`)
}

const HOST = [OVERRIDES, 'Hosts', 'Host']

/** The places that must all name the page of the shared runtime. */
const RUNTIME_PAGES = [
  [...HOST, 'AllFormFactors', 'ExtensionPoint', 'Page', 'SourceLocation'],
  [...HOST, 'DesktopFormFactor', 'FunctionFile'],
]

function runtimeProblems(manifest: XmlElement): string[] {
  const [runtime] = elementsAt(manifest, [...HOST, 'Runtimes', 'Runtime'])
  const resid = runtime?.attributes.resid
  const url = resourcesOf(manifest).find(({ id }) => id === resid)?.value
  const [location] = elementsAt(manifest, ['DefaultSettings', 'SourceLocation'])
  const sets = elementsAt(manifest, ['Requirements', 'Sets', 'Set']).map(({ attributes }) => attributes.Name)
  const panes = everyElement(manifest)
    .filter(({ type }) => type === 'ShowTaskpane')
    .flatMap((action) => elementsAt(action, ['SourceLocation']))
  const others = [...RUNTIME_PAGES.flatMap((path) => elementsAt(manifest, path)), ...panes]
  return [
    ...(runtime?.attributes.lifetime === 'long' ? [] : ['The shared runtime must have the lifetime "long".']),
    ...(sets.includes('SharedRuntime') ? [] : ['The requirement set SharedRuntime is missing.']),
    ...(location?.attributes.DefaultValue === url
      ? []
      : ['DefaultSettings must name the page of the shared runtime.']),
    ...others
      .filter(({ attributes }) => attributes.resid !== resid)
      .map(
        ({ name, attributes }) =>
          `${name} names ${attributes.resid ?? 'nothing'}, not the page of the shared runtime.`,
      ),
  ]
}
