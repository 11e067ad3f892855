import { runContract } from '../contract'
import { writeReport } from '../contract/report'

/** The developer page: runs the host contract in whatever Excel it is opened in and writes a report sheet. */
async function runChecks(button: HTMLButtonElement, said: HTMLElement): Promise<void> {
  button.disabled = true
  said.textContent = 'Running the checks …'
  try {
    const results = await runContract()
    await writeReport(results)
    const passed = results.filter((result) => result.passed).length
    said.textContent = `${passed} passed, ${results.length - passed} failed. The report is on the sheet Host checks.`
  } catch (error) {
    said.textContent = `The report could not be written: ${error instanceof Error ? error.message : String(error)}`
  }
  button.disabled = false
}

const [button, said] = [
  document.querySelector('button'),
  document.querySelector<HTMLElement>('[role=status]'),
]
void Office.onReady(() => {
  if (!button || !said) return
  said.textContent = 'Open an empty workbook first: the checks write to the workbook that is open.'
  button.hidden = false
  button.addEventListener('click', () => void runChecks(button, said))
})
