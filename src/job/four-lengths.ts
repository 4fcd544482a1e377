import { readLength, type Units } from '../length.ts'

/** No four lengths are longer. */
const longest = 300

/** One length, or four with commas or blanks between, as texts; null where it is neither. */
export const fourLengths = (said: string, units: Units): readonly string[] | null => {
  const text = said.trim()
  if (text.length > longest) return [text]
  const reads = (part: string): boolean => 'mm' in readLength(part, units)
  if (text.includes(',')) {
    const parts = text.split(',').map((part) => part.trim())
    return parts.length === 4 ? parts : null
  }
  if (reads(text)) return [text]
  const bare = text.split(/\s+/)
  const withUnits = (text.match(/[^\p{L}"']+[\p{L}"']+/gu) ?? []).map((part) => part.trim())
  // `1 1/2` may be one length or two: only commas tell
  const doubtful = /(?:^|[^\d/.])\d+\s+\d+\//.test(text)
  if (bare.length === 4 && !doubtful && bare.every(reads)) return bare
  if (withUnits.length === 4 && withUnits.every(reads)) return withUnits
  const numbers = bare.filter((part) => /^[\d.]+(?![\d./])/.test(part))
  return numbers.length > 1 ? null : [text]
}

/** Top, right, bottom, left of the upright page from one length or four. */
export const marginsFrom = (lengths: readonly number[]) => {
  const [top, right = top, bottom = top, left = right] = lengths as [number, number?, number?, number?]
  return { top, right, bottom, left }
}
