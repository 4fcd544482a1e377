import { inch } from '../geometry/inch.ts'
import { letterPattern } from './letter-pattern.ts'
import { nearWord } from './near.ts'
import { quote } from './quote.ts'
import type { Units } from './units.ts'

export type LengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft'

/** `unit` is the last one written, null for a bare number; `error` is a plain sentence without a full stop. */
export type LengthReading =
  | { readonly mm: number; readonly unit: LengthUnit | null }
  /** `meant`: the text that the sentence asks about */
  | { readonly error: string; readonly meant?: string }

/** Tenths of a millimetre: whole numbers, so that a fraction is divided once and rounded once. */
const tenths: Readonly<Record<LengthUnit, number>> = { mm: 10, cm: 100, m: 10_000, in: 254, ft: 3048 }

const unitWords: ReadonlyMap<string, LengthUnit> = new Map([
  ['mm', 'mm'],
  ['cm', 'cm'],
  ['m', 'm'],
  ['in', 'in'],
  ['ft', 'ft'],
  ['inch', 'in'],
  ['inches', 'in'],
  ['foot', 'ft'],
  ['feet', 'ft'],
  ['"', 'in'],
  ["'", 'ft'],
])

const longest = 60
const forms = 'write it like 640, 17 3/16 in, 4 ft 7 1/4 in, 1.2 m or 18 mm'

/**
 * A 32nd of an inch more or less, as we show it: behind the number, before its unit. A plain hyphen only behind a fraction:
 * behind a whole number it may be half of `17-3/16`.
 */
const fineMark =
  /(?:(?<whole>\d)\s*(?:(?<more>\+)|–)|(?<fraction>\/\s*\d+)\s*-)(?=\s*(?:in|inch|inches|"|”|″)?\.?\s*$)/u

/** A number as numerator over denominator, then maybe a unit. `17 3/16`, `17-3/16`, `3/4`, `.5`, `12.`, `12`. */
const partOf = letterPattern(
  String.raw`(?:(?<whole>\d+)(?:\s+|\s*-\s*)(?=\d+\s*\/))?(?:(?<top>\d+)\s*\/\s*(?<bottom>\d+)|(?<decimal>\d+\.?\d*|\.\d+))\s*(?:(?<unit>\p{L}+|["'])\.?)?`,
  'uy',
)

/** `1'000`, as thousands are marked in some countries: inches after feet have two digits at most. */
const markedThousands = /^[-+]?\s*\d{1,3}(?:'\d{3})+(?!\d|\s*\/)/

/** A number with a comma as we write it: of unlike marks the last is the point, several alike mark thousands. */
const withPoint = (number: string): string => {
  const marked = number.replace(/'(?=\d{3}(?!\d))/g, '')
  const marks = marked.replace(/[^.,]/g, '')
  const parts = marked.split(/[.,]/)
  if (parts.length > 2 && /^(?:\.+|,+)$/.test(marks)) return parts.join('')
  return parts.length === 1 ? marked : `${parts.slice(0, -1).join('')}.${parts.at(-1)!}`
}

const numbers = /\d+(?:[.,']\d+)*/g

/** `1,200`: a comma for thousands or for a point, nobody can tell. */
const eitherComma = /^[1-9]\d{0,2},\d{3}$/

interface Part {
  readonly top: number
  readonly bottom: number
  readonly unit: LengthUnit | null
}

/** Curly and prime marks, dashes and one-letter fractions as they come from other programs. */
const plain = (text: string): string =>
  text
    .replace(/[¼-¾⅐-⅞]/g, (c) => ` ${c.normalize('NFKC').replace('\u2044', '/')}`)
    .replace(/[‘’′]/g, "'")
    .replace(/[“”″]|''/g, '"')
    .replace(/[−–‐‑]/g, '-')
    .trim()

const readPart = (
  match: RegExpExecArray,
  shown: string,
): Part | { readonly error: string; readonly meant?: string } => {
  const { whole, top, bottom, decimal, unit } = match.groups!
  const known = unit === undefined ? null : unitWords.get(unit.toLowerCase())
  if (known === undefined) {
    const near = nearWord(unit!, [...unitWords.keys()].slice(0, 9))
    const remedy = near === undefined ? 'use mm, cm, m, in or ft' : `did you mean ${quote(near)}?`
    return {
      error: `unknown unit ${quote(unit!)} in ${shown}; ${remedy}`,
      ...(near !== undefined && { meant: match.input.replace(unit!, near) }),
    }
  }
  if (decimal !== undefined) {
    const [before = '', after = ''] = decimal.split('.')
    return { top: Number(before + after), bottom: 10 ** after.length, unit: known }
  }
  if (Number(bottom) === 0)
    return { error: `${shown} has a fraction over zero; the lower number must be 1 or more` }
  if (whole !== undefined && Number(top) >= Number(bottom))
    return {
      error: `${shown} has the fraction ${top}/${bottom} after a whole number; it must be less than 1`,
    }
  return { top: Number(whole ?? 0) * Number(bottom) + Number(top), bottom: Number(bottom), unit: known }
}

/** A length that is `side` 1/32 in off what is written. */
const withFine = (text: string, side: 1 | -1, whole: string, units: Units): LengthReading => {
  const read = readLength(text, units)
  if ('error' in read) return read
  if ((read.unit ?? units) !== 'in')
    return { error: `${quote(whole.trim())}: + and – are 1/32 in more and less; they go with inches only` }
  const away = read.mm < 0 || Object.is(read.mm, -0) ? -side : side
  return { ...read, mm: read.mm + (away * inch) / 32 }
}

/**
 * A length as people type it, in mm. Behind inches + is 1/32 more and – is 1/32 less, as figures show them. A bare number is in `units`, a bare number after feet in inches.
 * A minus sign is read; whether a length may be negative is for the caller to say.
 */
export const readLength = (text: string, units: Units): LengthReading => {
  // before any pattern sees it
  if (text.length > 4 * longest) return { error: `${quote(text.trim())} is too long for a length; ${forms}` }
  const fine = fineMark.exec(text)
  if (fine)
    return withFine(
      text.replace(fineMark, '$<whole>$<fraction>'),
      fine.groups!.more === undefined ? -1 : 1,
      text,
      units,
    )
  const shown = quote(text.trim())
  const source = plain(text.slice(0, 2 * longest))
  if (source === '') return { error: `a length is missing; ${forms}` }
  if (source.length > longest) return { error: `${shown} is too long for a length; ${forms}` }
  if (/\d,\d/.test(source)) {
    const either = (way: (number: string) => string): string =>
      source.replace(numbers, (number) => (eitherComma.test(number) ? way(number) : withPoint(number)))
    const [whole, pointed] = [
      either((number) => number.replace(',', '')),
      either((number) => `${Number(withPoint(number))}`),
    ]
    if (whole !== pointed)
      return { error: `${shown} has a comma; write ${quote(whole)} or ${quote(pointed)}, as you mean it` }
    const meant = source.replace(numbers, withPoint)
    return {
      error: `${shown} has a comma; write ${quote(meant)}, ${meant.includes('.') ? 'with a point' : 'without it'}`,
      meant,
    }
  }
  const thousands = markedThousands.exec(source)?.[0]
  if (thousands !== undefined) {
    const meant = source.replace(thousands, thousands.replace(/'/g, ''))
    return {
      error: `${shown} has the mark of feet; write ${quote(meant)}, or feet as in 4 ft 7 1/4 in`,
      meant,
    }
  }

  const sign = /^[-+]\s*/.exec(source)?.[0] ?? ''
  const parts: Part[] = []
  const part = partOf(source)
  let at = sign.length
  while (at < source.length && parts.length < 2) {
    part.lastIndex = at
    const match = part.exec(source)
    if (match === null) break
    const read = readPart(match, shown)
    if ('error' in read) return read
    parts.push(read)
    at = part.lastIndex
    // between feet and inches: blanks, or a hyphen as on plans
    at += /^\s*-?\s*/.exec(source.slice(at))![0].length
  }
  const [first, second] = parts
  if (first === undefined || at < source.length || /-\s*$/.test(source))
    return { error: `${shown} is not a length; ${forms}` }
  if (second !== undefined && (first.unit !== 'ft' || (second.unit ?? 'in') !== 'in'))
    return { error: `${shown} is not one length: only feet and inches go together, as in 4 ft 7 1/4 in` }
  if (second !== undefined && second.top >= 12 * second.bottom)
    return { error: `${shown} has 12 in or more after its feet; write it like 4 ft 7 1/4 in` }

  let mm = (first.top * tenths[first.unit ?? units]) / (first.bottom * 10)
  if (second !== undefined)
    mm =
      (first.top * tenths.ft * second.bottom + second.top * tenths.in * first.bottom) /
      (first.bottom * second.bottom * 10)
  if (!Number.isFinite(mm)) return { error: `${shown} is too large for a length` }
  const unit = second === undefined ? first.unit : 'in'
  return { mm: sign.startsWith('-') ? 0 - mm : mm, unit }
}
