import { letterPattern } from '../../length/letter-pattern.ts'
import { nearWord } from '../../length/near.ts'
import { quote } from '../../length/quote.ts'
import { readLength, type Units } from '../../length.ts'
import { type Material, materials, type Sheet } from '../design.ts'
import { dressedSize } from '../dressed.ts'
import { implausible, type Range, type Sizes } from '../plausible.ts'

/** A value read from one text, or why not: code and sentence. */
export type Reading<T> = { readonly value: T } | Fault
export interface Fault {
  readonly code: string
  readonly fault: string
  /** the key's own example says how it is written */
  readonly example?: true
  /** the text that the sentence asks about, in place of what was said */
  readonly meant?: string
}

/** `units` is undefined while the file does not say: then sizes are not judged. */
export const lengthValue = (text: string, units: Units | undefined, range: Sizes): Reading<number> => {
  const reading = readLength(text, units ?? 'mm')
  if ('error' in reading)
    return {
      code: 'length',
      fault: reading.error,
      ...(reading.meant !== undefined && { meant: reading.meant }),
    }
  const fault = units === undefined ? null : implausible(text.trim(), reading, range, units)
  return fault ?? { value: reading.mm }
}

const degrees = (text: string): number =>
  /^\d{1,3}(?:\.\d{1,6})?\s*(?:°|deg(?:rees?)?)?$/i.test(text.trim()) ? Number.parseFloat(text) : Number.NaN

const angleFault = (text: string, { least, most }: Range): Fault => ({
  code: 'angle',
  fault: `${quote(text)} is not an angle from ${least}° to ${most}°`,
  example: true,
})

/** `48°`, `48`, `48.5 deg` */
export const angleValue = (text: string, range: Range): Reading<readonly number[]> => {
  const angle = degrees(text)
  return angle >= range.least && angle <= range.most ? { value: [angle] } : angleFault(text, range)
}

/** `40..50°`, `40 to 50`, `40° - 50°`, least first; one angle alone is the most */
export const anglesValue = (text: string, range: Range): Reading<readonly number[]> => {
  const ends = text.split(/\.\.+|\bto\b|[-–]/).map(degrees)
  const [least = Number.NaN, most = Number.NaN] = ends.length === 1 ? [range.least, ends[0]!] : ends
  return ends.length <= 2 && least >= range.least && most <= range.most && least <= most
    ? { value: [least, most] }
    : angleFault(text, range)
}

/** `38 x 89`, `1 1/2 × 3 1/2 in`: a unit behind the second holds for both. */
export const pairValue = (
  text: string,
  units: Units | undefined,
  range: Sizes,
): Reading<readonly [number, number]> => {
  const halves = text.split(/\s*[x×]\s*/i)
  const [first, second] = halves
  if (halves.length !== 2 || !first || !second) {
    const sides = text.split(/\s*(?:\bby\b|[*,;])\s*/i).map((side) => side.trim())
    const meant = sides.length === 2 && sides.every((side) => 'mm' in readLength(side, units ?? 'mm'))
    return meant
      ? {
          code: 'shape',
          fault: `${quote(text)} is written with an x: ${quote(sides.join(' x '))}`,
          meant: sides.join(' x '),
        }
      : { code: 'shape', fault: `${quote(text)} is not a pair`, example: true }
  }
  const dressed = range.timber && units === 'mm' ? dressedSize(text) : null
  if (dressed !== null)
    return dressed.cm === null
      ? {
          code: 'other-unit',
          fault: `${quote(text)} is a name in inches; dry it measures about ${dressed.dry} mm: measure it, and type that`,
          meant: dressed.dry,
        }
      : {
          code: 'other-unit',
          fault: `${quote(text)} is ${dressed.cm} mm if it is in cm; as a name in inches it measures about ${dressed.dry} mm dry: measure it, and type that`,
        }
  const b = readLength(second, units ?? 'mm')
  const a = readLength(first, units ?? 'mm')
  const shared = 'mm' in a && 'mm' in b && a.unit === null && b.unit !== null ? `${first} ${b.unit}` : first
  const one = lengthValue(shared, units, range)
  const two = lengthValue(second, units, range)
  if ('fault' in one)
    return within(one, (meant) => {
      // both are wrong as they stand: one unit behind them is meant for both
      const [unit] = /\p{L}+$/u.exec(meant) ?? []
      const both = `${second} ${unit}`
      return 'fault' in two && unit !== undefined && 'value' in lengthValue(both, units, range)
        ? `${first} x ${both}`
        : `${meant} x ${second}`
    })
  return 'fault' in two ? within(two, (meant) => `${first} x ${meant}`) : { value: [one.value, two.value] }
}

/** A fault of a piece of a text, what was meant with the rest of it. */
const within = (fault: Fault, whole: (meant: string) => string): Fault =>
  fault.meant === undefined ? fault : { ...fault, meant: whole(fault.meant) }

const materialLast = letterPattern(String.raw`^(.*\S)\s+(\p{L}+)$`, 'u')
const materialFirst = letterPattern(String.raw`^(\p{L}+)(?:\s+(.+))?$`, 'u')

/** `9 plywood`, `1/16 in steel`; plywood where no material is said. */
export const sheetValue = (text: string, units: Units | undefined, range: Range): Reading<Sheet> => {
  const turned = turnedSheet(text.trim(), units)
  if (turned) return turned
  const [, before, word] = materialLast(text).exec(text.trim()) ?? []
  const material = materials.find((m) => m === word?.toLowerCase())
  const thickness = lengthValue(material === undefined ? text : before!, units, range)
  if ('value' in thickness) return { value: { thickness: thickness.value, material: material ?? 'plywood' } }
  const materialWrong =
    thickness.code === 'length' && before !== undefined && 'mm' in readLength(before, units ?? 'mm')
  const own = material === undefined ? thickness : within(thickness, (meant) => `${meant} ${material}`)
  return materialWrong && material === undefined
    ? within(unknownWord('material', word!, materials), (meant) => `${before} ${meant}`)
    : own
}

/** `plywood 3/8`, or a material alone: told apart from a slip in a length. */
const turnedSheet = (text: string, units: Units | undefined): Fault | null => {
  const [, word, rest] = materialFirst(text).exec(text) ?? []
  const material = materials.find((m) => m === word?.toLowerCase())
  if (material === undefined) return null
  const order = 'thickness first, then the material'
  return rest !== undefined && 'mm' in readLength(rest, units ?? 'mm')
    ? { code: 'shape', fault: `${order}: ${quote(`${rest} ${material}`)}`, meant: `${rest} ${material}` }
    : { code: 'shape', fault: `${quote(text)} has no thickness in front; ${order}`, example: true }
}

export const choiceValue = (text: string, of: readonly string[], what: string): Reading<string> => {
  const word = text.trim().toLowerCase()
  if (of.includes(word)) return { value: word }
  const other = what === 'units' ? otherUnits(text) : null
  return other === null
    ? unknownWord(what, text, of)
    : { code: 'choice', fault: `unknown units ${quote(text)}; ${other}; allowed: ${of.join(', ')}` }
}

/** What to do with lengths in a unit that no file is in; null for any other word. */
const otherUnits = (word: string): string | null => {
  const written = (units: Units, times: number, example: string): string =>
    `say ${units}, and write lengths in ${units}, ${times} times the figure, or with their own unit: ${example}`
  if (/^(?:cm|centimet(?:er|re)s?)$/i.test(word.trim())) return written('mm', 10, '64 cm')
  if (/^(?:m|met(?:er|re)s?)$/i.test(word.trim())) return written('mm', 1000, '0.64 m')
  return /^(?:ft|foot|feet)$/i.test(word.trim()) ? written('in', 12, '2 ft') : null
}

/** A plain yes or no where a sheet is asked for; `spared`: its key may be left out. */
export const yesNoFault = (text: string, spared: boolean): Fault | null =>
  /^(?:yes|no|true|false|on|off)$/i.test(text.trim())
    ? {
        code: 'shape',
        fault: `${quote(text)} is no sheet; write a thickness and a material${spared ? ', or leave the key out' : ''}`,
        example: true,
      }
    : null

/** `inch` and `millimetres` are no slips of `in` and `mm`. */
const unitMeant = (word: string): string | undefined => {
  if (/^milli/i.test(word.trim())) return 'mm'
  const reading = readLength(`1 ${word.trim()}`, 'mm')
  return 'error' in reading ? undefined : (reading.unit ?? undefined)
}

const unknownWord = (what: string, word: string, of: readonly Material[] | readonly string[]): Fault => {
  const near = nearWord(word, of) ?? of.find((own) => own === unitMeant(word))
  const meant = near === undefined ? '' : `did you mean ${quote(near)}? `
  return {
    code: 'choice',
    fault: `unknown ${what} ${quote(word)}; ${meant}allowed: ${of.join(', ')}`,
    ...(near !== undefined && { meant: near }),
  }
}

export const countValue = (text: string, { least, most }: Range): Reading<number> => {
  const count = /^\d{1,6}$/.test(text.trim()) ? Number(text) : Number.NaN
  return count >= least && count <= most
    ? { value: count }
    : { code: 'range', fault: `${quote(text)} is not a whole number from ${least} to ${most}` }
}

/** One line of any language: no control characters, `most` letters. `comment`: what stands there in place of it. */
export const textValue = (text: string, most: number, comment?: string): Reading<string> => {
  const letters = [...text]
  if (comment !== undefined) {
    const meant = quote(JSON.stringify(comment), most)
    return { code: 'text', fault: `is blank, as # begins a comment; put it in quotes: ${meant}` }
  }
  if (text.trim() === '') return { code: 'text', fault: `is blank; give it 1 to ${most} letters` }
  if (letters.length > most)
    return { code: 'text', fault: `has ${letters.length} letters; at most ${most} are allowed` }
  // line and paragraph marks and bidi overrides would break or turn round a printed line as well; told by what is left, since V8
  // builds a table of all letters for a class of them
  const at = letters.findIndex((letter) =>
    /[^ -~\u00a0-\u2027\u202f-\u2065\u206a-\ud7ff\ue000-\u{10ffff}]/u.test(letter),
  )
  if (at < 0) return { value: text }
  const code = letters[at]!.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')
  return { code: 'text', fault: `has a control character (U+${code}) as letter ${at + 1}; take it out` }
}
