/** A fingerprint of a text: at least 8 bytes as lower-case hex. The platform hands it in. */
export type Fingerprint = (text: string) => string

/** No vowels and no look-alikes: a code never spells a word and survives a bad printer. */
const alphabet = 'BCDFGHJKMNPQRSTVWXYZ23456789'

const short = (text: string, fingerprint: Fingerprint): string => {
  let value = Number.parseInt(fingerprint(text).slice(0, 12), 16)
  let code = ''
  for (let i = 0; i < 4; i++) {
    code += alphabet[value % alphabet.length]
    value = Math.floor(value / alphabet.length)
  }
  return code
}

/** The set code: four letters each for the design, the paper and what was plotted on it, and the printer's correction. */
export const setCode = (
  parts: { readonly design: unknown; readonly paper: unknown; readonly printer: unknown },
  fingerprint: Fingerprint,
): string =>
  [parts.design, parts.paper, parts.printer].map((part) => short(JSON.stringify(part), fingerprint)).join('-')
