/** Why a file cannot be read, as the end of a sentence that begins "Cannot read class.xlsx: ". */
export class Unreadable extends Error {}
