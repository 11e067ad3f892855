import { Problem } from './errors'

/** The problem of a sheet that takes neither cells nor pictures. */
export function protectedSheet(name: string): Problem {
  return new Problem(
    `The sheet ${name} is protected, so nothing can be put on it.`,
    'Choose Review, then Unprotect Sheet, and try again; protect it again afterwards.',
  )
}
