/**
 * What an add-in-only manifest must look like, as far as this add-in uses it. Source: Microsoft Learn, "How to find the proper
 * order of manifest elements", and the schemas that it points to (OfficeAppManifestV1_1.xsd, TaskPaneAppVersionOverridesV1_0.xsd,
 * OfficeAppBasicTypesV1_0.xsd, published with the documentation; also [MS-OWEMXML] section 5). Stricter than the schemas in one
 * way: parts that they leave open and this add-in cannot do without are required.
 */

const BASE = 'http://schemas.microsoft.com/office/appforoffice/1.1'
const OVERRIDES = 'http://schemas.microsoft.com/office/taskpaneappversionoverrides'
const BASIC_TYPES = 'http://schemas.microsoft.com/office/officeappbasictypes/1.0'

export const XSI = 'http://www.w3.org/2001/XMLSchema-instance'

/** How often a child may stand in its parent. */
export interface Occurrence {
  readonly name: string
  readonly least: 0 | 1
  readonly most: 1 | typeof Infinity
}

/** The children in their order: "Id!" exactly once, "Host+" once or more, "Control*" any number, "Dictionary" at most once. */
function sequence(text: string): Occurrence[] {
  return text
    .split(' ')
    .filter((part) => part !== '')
    .map((part) => ({
      name: part.replace(/[!+*]$/, ''),
      least: /[!+]$/.test(part) ? 1 : 0,
      most: /[+*]$/.test(part) ? Infinity : 1,
    }))
}

/** The children of each element in their order; elements that come in types are named "Host:Workbook", by their xsi:type. */
const CHILDREN: Readonly<Record<string, readonly Occurrence[]>> = Object.fromEntries(
  Object.entries({
    'OfficeApp:TaskPaneApp':
      'Id! AlternateId Version! ProviderName! DefaultLocale! DisplayName! Description! IconUrl! HighResolutionIconUrl! ' +
      'SupportUrl! AppDomains Hosts! Requirements! DefaultSettings! Permissions! Dictionary VersionOverrides!',
    AppDomains: 'AppDomain+',
    Hosts: 'Host+',
    Requirements: 'Sets! Methods',
    Sets: 'Set+',
    DefaultSettings: 'SourceLocation!',
    'VersionOverrides:VersionOverridesV1_0': 'Description Requirements Hosts! Resources!',
    'Host:Workbook': 'Runtimes! AllFormFactors! DesktopFormFactor!',
    Runtimes: 'Runtime+',
    AllFormFactors: 'ExtensionPoint!',
    'ExtensionPoint:CustomFunctions': 'Script! Page! Metadata! Namespace!',
    Script: 'SourceLocation!',
    Page: 'SourceLocation!',
    Metadata: 'SourceLocation!',
    DesktopFormFactor: 'GetStarted FunctionFile ExtensionPoint+',
    GetStarted: 'Title! Description! LearnMoreUrl!',
    'ExtensionPoint:PrimaryCommandSurface': 'OfficeTab* CustomTab*',
    OfficeTab: 'Group+',
    CustomTab: 'Group+ Label!',
    Group: 'Label! Icon! Control+',
    'Control:Button': 'Label! Supertip! Icon! Action!',
    Supertip: 'Title! Description!',
    Icon: 'Image+',
    'Action:ShowTaskpane': 'TaskpaneId SourceLocation! Title',
    'Action:ExecuteFunction': 'FunctionName!',
    Resources: 'Images! Urls! ShortStrings! LongStrings!',
    Images: 'Image+',
    Urls: 'Url+',
    ShortStrings: 'String+',
    LongStrings: 'String+',
  }).map(([name, children]) => [name, sequence(children)]),
)

const TYPED = new Set(['OfficeApp', 'VersionOverrides', 'ExtensionPoint', 'Control', 'Action'])

/** The children that an element may have; undefined for a type that this schema does not know. */
export function childrenOf(name: string, type: string | null): readonly Occurrence[] | undefined {
  if (TYPED.has(name) || type !== null) return CHILDREN[`${name}:${type ?? ''}`]
  return CHILDREN[name] ?? []
}

const IN_BASIC_TYPES = new Set(['Images', 'Urls', 'ShortStrings', 'LongStrings', 'Image', 'Url', 'String'])

/** The namespace of an element, in the base of the manifest or within its VersionOverrides. */
export function namespaceOf(name: string, isInOverrides: boolean): string {
  if (!isInOverrides) return BASE
  return IN_BASIC_TYPES.has(name) ? BASIC_TYPES : OVERRIDES
}

/** What a value must be, with the rule in words. */
export interface ValueRule {
  readonly pattern: RegExp
  readonly rule: string
}

const SHORT: ValueRule = { pattern: /^.{1,125}$/s, rule: '1 to 125 characters' }
const LONG: ValueRule = { pattern: /^.{1,250}$/s, rule: '1 to 250 characters' }
const ADDRESS: ValueRule = { pattern: /^https:\/\/.{1,2040}$/, rule: 'an https address' }

/** What the text or DefaultValue of an element must be. */
export const ELEMENT_VALUES: Readonly<Record<string, ValueRule>> = {
  Id: { pattern: /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i, rule: 'a GUID' },
  Version: { pattern: /^\d{1,5}(\.\d{1,5}){3}$/, rule: 'four numbers with points between' },
  ProviderName: SHORT,
  DefaultLocale: { pattern: /^[a-z]{2,3}-[A-Z]{2}$/, rule: 'a language and a country, like en-GB' },
  DisplayName: SHORT,
  Description: LONG,
  IconUrl: ADDRESS,
  HighResolutionIconUrl: ADDRESS,
  SupportUrl: ADDRESS,
  SourceLocation: ADDRESS,
  Permissions: {
    pattern: /^(Restricted|ReadDocument|ReadAllDocument|WriteDocument|ReadWriteDocument)$/,
    rule: 'one of the five permissions of a task pane',
  },
  TaskpaneId: SHORT,
}

/** What the values of a group of resources must be. */
export const RESOURCE_VALUES: Readonly<Record<string, ValueRule>> = {
  Images: ADDRESS,
  Urls: ADDRESS,
  ShortStrings: SHORT,
  LongStrings: LONG,
}

/** The group of resources that a resid of an element points into. */
export const RESOURCE_GROUP: Readonly<Record<string, string>> = {
  Image: 'Images',
  Runtime: 'Urls',
  SourceLocation: 'Urls',
  FunctionFile: 'Urls',
  LearnMoreUrl: 'Urls',
  Label: 'ShortStrings',
  Title: 'ShortStrings',
  Namespace: 'ShortStrings',
  Description: 'LongStrings',
}

/** A resid is at most this long. */
export const LONGEST_RESID = 32

/** The sizes, in pixels, that every Icon must have. */
export const ICON_SIZES = ['16', '32', '80']
