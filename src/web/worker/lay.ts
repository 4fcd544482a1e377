import {
  type Answer,
  type Design,
  isRefusal,
  type Profile,
  type ReadLaying,
  type Refusal,
  readLaying,
  readProfile,
  readSettled,
  showLength,
} from '../../index.ts'
import type { Lay } from './messages.ts'

/** A refusal in words; what the page shows is never a stack of calls. */
const refusalWords = (refusal: Refusal): string => {
  switch (refusal.refused) {
    case 'stop':
      return refusal.checks
        .filter(({ level }) => level === 'stop')
        .map(({ message }) => message)
        .join('\n')
    case 'no-curve':
      return 'a flat is straight cuts only: add a quarter to have pages'
    default:
      return refusal.faults.map((fault) => fault.replace(/^--(\w+)/, '$1')).join('\n')
  }
}

/** The result of a job; throws the words of a refusal. */
export const granted = <T extends object>(result: T | Refusal): T => {
  if (isRefusal(result)) throw new Error(refusalWords(result))
  return result
}

/** The design with the figures that it left open; throws the words of what is wrong with it. */
export const settledOf = (text: string): { readonly design: Design; readonly answers: readonly Answer[] } => {
  const reading = readSettled(text)
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
  return reading
}

export const designOf = (text: string): Design => settledOf(text).design

export const profileOf = (text: string | null): Profile | null => {
  if (text === null) return null
  const profile = readProfile(text)
  if ('error' in profile) throw new Error(`the printer's file: ${profile.error}`)
  return profile
}

/** From memory: office printers leave 3 to 5 mm blank. mm */
const nearEdge = 3

/** Margins that hardly a printer prints; of a measured one it is known what it does. */
const edgeDoubts = ({ words }: Lay, profile: Profile | null, { sheet }: ReadLaying, { units }: Design) => {
  const least = Math.min(...Object.values(sheet.margins))
  if (words.margin === undefined || (profile?.margins ?? null) !== null || least >= nearEdge) return []
  const shown = showLength(least, units, { decimals: 1, unit: true })
  return [
    `a margin of ${shown}: most printers do not print so near the edge, and leave out what lies there; measure yours under printer, or give it more`,
  ]
}

export const layingOf = (lay: Lay, design: Design): ReadLaying => {
  const profile = profileOf(lay.profile)
  const laying = granted(readLaying(lay.words, profile, design))
  return { ...laying, warnings: [...laying.warnings, ...edgeDoubts(lay, profile, laying, design)] }
}
