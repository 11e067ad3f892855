import { LIBREOFFICE } from '../files/libreoffice'
import { findChromium, installChromium } from './chromium'

/** `npm test` runs this first: sees that a Chromium is there for the browser tests, and installs one where it is not. */
if (findChromium() === null) {
  console.log('No Chromium on this machine: installing one for the browser tests.')
  try {
    installChromium()
  } catch {
    console.error(
      'Chromium could not be installed. Install Chromium or Chrome, or say where one is in CHROMIUM_PATH.',
    )
  }
}
if (LIBREOFFICE === null)
  console.log('No LibreOffice on this machine: the tests that ask it are left out, and shown as skipped.')
process.exitCode = findChromium() === null ? 1 : 0
