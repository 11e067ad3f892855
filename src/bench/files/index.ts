export { lostBySaving } from './lost'
export { readXlsx, showWorkbook } from './openXlsx'
export { saveXlsx } from './saveXlsx'
