import { availableParallelism } from 'node:os'
import { configDefaults, defineConfig } from 'vitest/config'

/** Rooms that know no Office, no file and no page: their tests share one set of modules in each worker. */
const PURE = 'tests/{answers,arithmetic,home,items,lesson,marksheet,mastery,published}/**/*.test.ts'
/** What is asked of LibreOffice, beside what is asked of the same files without it. */
const LIBREOFFICE = 'tests/files/{formExport,homeAndBack,homeFeedback,libreoffice,roundTrip,sorting}.test.ts'
/** What needs the built add-in or the built bench, most of it in Chromium. */
const BUILT = ['tests/browser/**/*.test.ts', 'tests/bench/page.test.ts', 'tests/house/{addin,safety}.test.ts']

export default defineConfig({
  test: {
    maxWorkers: availableParallelism(),
    testTimeout: 60_000,
    hookTimeout: 60_000,
    projects: [
      { extends: true, test: { name: 'unit', include: [PURE], isolate: false } },
      {
        extends: true,
        test: {
          name: 'host',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: [...configDefaults.exclude, PURE, LIBREOFFICE, ...BUILT],
        },
      },
      { extends: true, test: { name: 'browser', include: BUILT, globalSetup: 'tests/setup/stage.ts' } },
      { extends: true, test: { name: 'libreoffice', include: [LIBREOFFICE] } },
    ],
  },
})
