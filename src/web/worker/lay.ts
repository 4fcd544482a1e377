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
} from '../../index.ts'
import { faultWords } from '../words/form-words.ts'
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
      return faultWords(refusal.faults)
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

export const layingOf = (lay: Lay, design: Design): ReadLaying =>
  granted(readLaying(lay.words, profileOf(lay.profile), design))
