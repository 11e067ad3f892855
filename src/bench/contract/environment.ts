const SETS = [
  'ExcelApi',
  'ExcelApiOnline',
  'ExcelApiDesktop',
  'SharedRuntime',
  'CustomFunctionsRuntime',
  'DialogApi',
  'RibbonApi',
] as const
/** Versions of a requirement set are looked for from 1.1 to this one. */
const NEWEST = 40

/** What the checks run in, a line each: host, platform, build, languages, requirement sets. */
export function environment(): readonly (readonly [what: string, value: string])[] {
  const { diagnostics, displayLanguage, contentLanguage } = Office.context
  const { host, platform, version } = diagnostics
  return [
    ['Host', String(host)],
    ['Platform', String(platform)],
    ['Build', version],
    ['Language', `${displayLanguage} on screen, ${contentLanguage} in the workbook`],
    ['Requirement sets', SETS.map(supported).join(', ')],
  ]
}

function supported(set: string): string {
  for (let minor = NEWEST; minor > 0; minor--)
    if (Office.context.requirements.isSetSupported(set, `1.${minor}`)) return `${set} 1.${minor}`
  return `no ${set}`
}
