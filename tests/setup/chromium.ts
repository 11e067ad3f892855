import { execFileSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { chromium } from 'playwright-core'

const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
]

/** The Chromium that browser tests run in: CHROMIUM_PATH, one installed on this machine, or the one playwright-core fetched. */
export function findChromium(): string | null {
  const given = process.env.CHROMIUM_PATH
  return (
    [...(given === undefined ? [] : [given]), ...PLACES, chromium.executablePath()].find((path) =>
      existsSync(path),
    ) ?? null
  )
}

/** Installs Chromium: from the system's packages on Debian as root, elsewhere by playwright-core. Throws where that fails. */
export function installChromium(): void {
  const run = (command: string, ...options: string[]) => execFileSync(command, options, { stdio: 'inherit' })
  if (existsSync('/usr/bin/apt-get') && process.getuid?.() === 0) {
    run('apt-get', 'update', '-qq')
    run(
      'apt-get',
      'install',
      '-y',
      '-qq',
      '--no-install-recommends',
      'chromium',
      'fonts-liberation',
      'fonts-dejavu-core',
    )
  } else run(process.execPath, 'node_modules/playwright-core/cli.js', 'install', 'chromium')
}
