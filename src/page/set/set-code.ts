import type { Design } from '../../design/design.ts'

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

/** What each of the three parts of a set code depends on. */
const parts = ['design', 'paper', 'printer'] as const
export type CodePart = (typeof parts)[number]

/** A set code by its parts, four letters each. */
export type CodeParts = Readonly<Record<CodePart, string>>

export const showCode = (code: CodeParts): string => parts.map((part) => code[part]).join('-')

/** The parts of a code that `showCode` wrote. */
export const codeParts = (code: string): CodeParts => {
  const [design = '', paper = '', printer = ''] = code.split('-')
  return { design, paper, printer }
}

/** What the part of a design depends on: a ramp has all in it that it took over, so from where does not count. */
export const codedDesign = (design: Design): unknown => ({
  ...design,
  ramps: design.ramps.map(({ like, ...ramp }) => ramp),
})

/** One part, from all that it depends on. */
export const codePart = (of: unknown, fingerprint: Fingerprint): string =>
  short(JSON.stringify(of), fingerprint)

/** The set code: of the design, of the paper and what was plotted on it, of the printer's correction. */
export const setCode = (of: Readonly<Record<CodePart, unknown>>, fingerprint: Fingerprint): string =>
  showCode({
    design: codePart(of.design, fingerprint),
    paper: codePart(of.paper, fingerprint),
    printer: codePart(of.printer, fingerprint),
  })
