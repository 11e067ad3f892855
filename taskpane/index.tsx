import { createRoot } from 'react-dom/client'
import { Pane } from './Pane'
import { connectRibbon } from './ribbon'
import './taskpane.css'

const NOT_IN_EXCEL = 'This page belongs beside a workbook: open it in Excel, from Columnwise on the Home tab.'

async function start(): Promise<void> {
  const { host } = await Office.onReady()
  const place = document.getElementById('pane')
  if (!place) return
  if (host === Office.HostType.Excel) {
    connectRibbon()
    createRoot(place).render(<Pane />)
  } else place.textContent = NOT_IN_EXCEL
}

void start()
