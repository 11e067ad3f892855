import { Unreadable } from './unreadable'

const OLE = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]

/** Refuses, in a sentence that helps, bytes that are no archive: an empty file, one under a password, a workbook of the old kind. */
export function refuseNoArchive(bytes: Uint8Array): void {
  if (bytes.length === 0) throw new Unreadable('it is empty.')
  if (OLE.every((byte, index) => bytes[index] === byte)) throw new Unreadable(ofCompoundFile(bytes))
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b)
    throw new Unreadable('it is not an Excel workbook (.xlsx), whatever its name says.')
}

/** What a compound file is: Excel keeps a workbook under a password in one, and did every workbook up to 2003. */
function ofCompoundFile(bytes: Uint8Array): string {
  const holds = (name: string) => Array.from(name, (sign) => `${sign}\0`).join('')
  const names = new TextDecoder('latin1').decode(bytes)
  return names.includes(holds('EncryptedPackage'))
    ? 'it is protected by a password. Open it, take the password off and save a copy.'
    : 'it is in the old format (.xls). Open it and save it as an Excel workbook (.xlsx).'
}

/** What an archive is that holds no workbook, by the names of its parts. */
export function ofOtherArchive(parts: readonly string[]): string {
  if (parts.includes('mimetype') && parts.includes('content.xml'))
    return 'it is an OpenDocument file. Open it and save it as an Excel workbook (.xlsx).'
  if (parts.includes('xl/workbook.bin'))
    return 'it is a binary workbook (.xlsb). Open it and save it as an Excel workbook (.xlsx).'
  return 'it is not an Excel workbook (.xlsx): it is an archive without one.'
}
