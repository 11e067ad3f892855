import './taskpane.css'

const READY = 'The functions are ready: type =COLUMNWISE. in a cell to see them.'
const NOT_IN_EXCEL = 'This page belongs beside a workbook: open it in Excel, from Columnwise on the Home tab.'

async function showState(): Promise<void> {
  const { host } = await Office.onReady()
  const state = document.getElementById('state')
  if (state) state.textContent = host === Office.HostType.Excel ? READY : NOT_IN_EXCEL
}

void showState()
