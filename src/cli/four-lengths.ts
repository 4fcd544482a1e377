import { readLength, type Units } from '../length.ts'

/** One length, or four with commas or blanks between, as texts; null where it is neither. */
export const fourLengths = (said: string, units: Units): readonly string[] | null => {
  const trimmed = said.trim()
  const blanks = trimmed.split(/\s+/)
  const parts = trimmed.includes(',')
    ? trimmed.split(',').map((part) => part.trim())
    : blanks.length === 4 && blanks.every((part) => 'mm' in readLength(part, units))
      ? blanks
      : [trimmed]
  return parts.length === 1 || parts.length === 4 ? parts : null
}

/** Top, right, bottom, left of the upright page from one length or four. */
export const marginsFrom = (lengths: readonly number[]) => {
  const [top, right = top, bottom = top, left = right] = lengths as [number, number?, number?, number?]
  return { top, right, bottom, left }
}
