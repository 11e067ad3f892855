import { CONTRACT, outcomeOf, runContract, type CheckResult } from '../contract'
import { AFTER_WINDOWS, IN_PANE } from '../contract/inPane'
import { reportText, writeReport } from '../contract/report'
import { STEPS, type Step } from '../contract/steps'
import './hostChecks.css'

/**
 * The host checks, in the add-in's own pane: a button at its foot opens them over the pane. They run the host contract in whatever Excel the
 * pane is in, then ask a person for a few steps, and give a report as a sheet and as a text. Only in builds with `--env checks=yes`.
 */
class HostChecks {
  readonly #dialog = make('dialog', { className: 'host-checks' })
  readonly #said = make('p', { role: 'status' })
  readonly #run = make('button', { textContent: 'Run the checks' })
  readonly #asked = make('section', { hidden: true })
  readonly #report = make('section', { hidden: true })

  constructor() {
    this.#said.textContent = `${CONTRACT.length + IN_PANE.length} checks take two to five minutes; ${STEPS.length} steps with you follow.`
    const opening = make('button', { className: 'host-checks-open', textContent: 'Host checks' })
    const close = make('button', { textContent: 'Close' })
    this.#run.addEventListener('click', () => void this.#runAll())
    close.addEventListener('click', () => {
      this.#dialog.close()
    })
    opening.addEventListener('click', () => {
      this.#dialog.showModal()
    })
    const heading = make('h1', { textContent: 'Host checks' })
    const first = make('p', {
      textContent:
        'Open an empty workbook first: the checks write to the workbook that is open. Some of them expect Excel in English (United States).',
    })
    this.#dialog.setAttribute('aria-label', 'Host checks')
    this.#dialog.append(heading, first, this.#run, this.#said, this.#asked, this.#report, close)
    document.body.append(opening, this.#dialog)
  }

  async #runAll(): Promise<void> {
    this.#run.disabled = true
    this.#report.hidden = true
    const checks = [...CONTRACT, ...IN_PANE]
    const results = [
      ...(await runContract(checks, (number) => {
        this.#said.textContent = `Check ${number} of ${checks.length} …`
      })),
    ]
    for (const [index, step] of STEPS.entries()) {
      this.#said.textContent = `Step ${index + 1} of ${STEPS.length}: ${step.name}.`
      results.push(await this.#askFor(step))
    }
    results.push(...(await runContract(AFTER_WINDOWS)))
    await this.#tell(results)
    this.#run.disabled = false
  }

  async #askFor(step: Step): Promise<CheckResult> {
    const ready = await outcomeOf(step.name, step.prepare)
    if (!ready.passed) return ready
    const isDone = await new Promise<boolean>((resolve) => {
      const answers = [
        ['Done', true],
        ['Leave out', false],
      ] as const
      const buttons = answers.map(([textContent, answer]) => {
        const button = make('button', { textContent })
        button.addEventListener('click', () => {
          resolve(answer)
        })
        return button
      })
      this.#asked.replaceChildren(make('p', { textContent: step.ask }), ...buttons)
      this.#asked.hidden = false
      buttons[0]?.focus()
    })
    this.#asked.hidden = true
    return isDone
      ? outcomeOf(step.name, step.judge)
      : { name: step.name, passed: false, message: 'Left out by the person at the screen.' }
  }

  async #tell(results: readonly CheckResult[]): Promise<void> {
    const passed = results.filter((result) => result.passed).length
    const counts = `${passed} passed, ${results.length - passed} did not.`
    const written = await outcomeOf('report', () => writeReport(results))
    this.#said.textContent = written.passed
      ? `${counts} The report is below and on the sheet Host checks.`
      : `${counts} The report is below; it could not be written to a sheet: ${written.message}`
    const text = make('textarea', { readOnly: true, rows: 12, value: reportText(results) })
    text.setAttribute('aria-label', 'Report')
    const copy = make('button', { textContent: 'Copy the report' })
    copy.addEventListener('click', () => {
      text.select()
      navigator.clipboard.writeText(text.value).then(
        () => {
          this.#said.textContent = 'The report is copied.'
        },
        () => {
          this.#said.textContent = 'The report is selected: press Ctrl+C to copy it.'
        },
      )
    })
    this.#report.replaceChildren(text, copy)
    this.#report.hidden = false
    copy.focus()
  }
}

/** An element with properties. */
function make<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  properties: Partial<HTMLElementTagNameMap[Tag]>,
): HTMLElementTagNameMap[Tag] {
  return Object.assign(document.createElement(tag), properties)
}

void Office.onReady(({ host }) => {
  if (host === Office.HostType.Excel) new HostChecks()
})
