import { harmless } from '../../length/quote.ts'

/** The name of a file as it is typed behind a command: between marks where a shell would part or change it. */
export const typedName = (file: string): string => {
  const name = harmless(file)
  if (!/[\s"'`$&|;<>()*?[\]{}#!~]/.test(name)) return name
  return /["`$!]/.test(name) ? `'${name.replaceAll("'", "'\\''")}'` : `"${name}"`
}
