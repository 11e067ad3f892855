import type { Book } from './book'
import { dialogsOf } from './dialogs'
import type { Transport } from './transport'

/** The requirement sets that the bench claims. */
const SETS = {
  ExcelApi: '1.17',
  SharedRuntime: '1.2',
  CustomFunctionsRuntime: '1.4',
  CustomFunctions: '1.9',
  RibbonApi: '1.2',
  DialogApi: '1.2',
} as const

/** A window that office.js has not been loaded into yet; what the host puts into it is set by name. */
export type BareWindow = object

/** What office.js asks about the app it runs in: desktop Excel for Windows, in English. */
function appContext(transport: Transport) {
  const constants = {
    GetAppType: 1,
    GetSolutionRef: 'bench-addin',
    GetAppVersionMajor: '16',
    GetAppVersionMinor: 1,
    GetAppUILocale: 'en-US',
    GetAppDataLocale: 'en-US',
    GetDocUrl: 'C:\\Bench\\Bench.xlsx',
    GetAppCapabilities: 0,
    GetActivationMode: 0,
    GetControlIntegrationLevel: 1,
    GetSolutionToken: '',
    GetCorrelationId: '',
    GetInstanceId: 'bench',
    GetTouchEnabled: false,
    GetSupportedMatrix: JSON.stringify(SETS),
    GetHostFullVersion: '16.0.17328.20068',
    GetFeaturesForSolution: '',
    GetInitialDisplayMode: 1,
  }
  const asked = Object.entries(constants).map(([name, answer]) => [name, () => answer] as const)
  return { ...Object.fromEntries(asked), GetSettings: () => documentSettings(transport.endpoint?.book) }
}

/** `Office.context.document.settings`, which shares its store with the workbook's settings. */
function documentSettings(book: Book | undefined) {
  const settings = book?.settings ?? new Map<string, unknown>()
  return {
    Read(keys: string[], values: string[]) {
      for (const [key, value] of settings) {
        keys.push(key)
        values.push(JSON.stringify(value))
      }
    },
    Write(keys: readonly string[], values: readonly string[]) {
      settings.clear()
      keys.forEach((key, i) => settings.set(key, JSON.parse(values[i] ?? 'null') as unknown))
    },
  }
}

/**
 * Makes an unmodified office.js believe that it runs in desktop Excel. To be called on a window before office.js is
 * loaded into it.
 */
export function installOfficeHost(window: BareWindow, transport: Transport): void {
  const context = appContext(transport)
  const external = {
    GetContext: () => context,
    GetHostInfo: () => 'Excel|Win32|16.01|en-US|||disableLogging|2',
    GetLoggingAllowed: () => false,
    ...dialogsOf(window)?.natives,
  }
  for (const [name, value] of Object.entries({ _richApiNativeBridge: transport, external }))
    Object.defineProperty(window, name, { value, configurable: true, writable: true })
}
