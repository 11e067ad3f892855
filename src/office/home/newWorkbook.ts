/** How many bytes are turned into text at a time: fewer than a function call takes arguments. */
const AT_ONCE = 8192

/** Opens an .xlsx file as a new workbook in a window of its own; the workbook in front stays as it is. */
export async function openNewWorkbook(bytes: Uint8Array): Promise<void> {
  let text = ''
  for (let at = 0; at < bytes.length; at += AT_ONCE)
    text += String.fromCharCode(...bytes.subarray(at, at + AT_ONCE))
  await Excel.createWorkbook(btoa(text))
}
