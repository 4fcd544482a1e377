import { countValue, pairValue } from '../../design/check/value.ts'
import { type Design, type PaperName, paperNames, type Units } from '../../design/design.ts'
import type { Range } from '../../design/plausible.ts'
import { rangeAt } from '../../design/schema.ts'
import { nearWord } from '../../length/near.ts'
import { units as unitNames } from '../../length/units.ts'
import { usualPaper } from '../../page/sheet/paper.ts'
import { steepnesses } from '../../ramp/steepness.ts'
import { lengthOption } from '../laying-words.ts'
import { asked, type Refusal } from '../refusal.ts'
import type { Rider } from './riders.ts'

/** What a builder knows before there is a design. Lengths mm; null for what is not said. */
export interface Wishes {
  readonly units: Units
  readonly paper: PaperName
  /** of the deck */
  readonly height: number | null
  readonly rider: Rider | null
  readonly width: number
  /** that the sides come from */
  readonly panels: number | null
  readonly timbers: number | null
  readonly garage: readonly [number, number] | null
  readonly door: readonly [number, number] | null
  readonly ceiling: number | null
}

/** The same in the words of the command line or of an answer. */
export const wishKeys = [
  'units',
  'height',
  'rider',
  'width',
  'panels',
  'timbers',
  'garage',
  'ceiling',
  'door',
  'paper',
] as const
export type WishKey = (typeof wishKeys)[number]
export type WishWords = { readonly [Key in WishKey]?: string }

/** Two of that width come out of one panel, trimmed. */
const usualWidth: Readonly<Record<Units, string>> = { mm: '1200', in: '47 1/2' }

/** Of a deck: lower ones leave no room for studs under a curve that bends; a side that is higher than a panel is wide is warned of. mm */
const heights: Range = { least: 200, most: 1220 }
const ages: Range = { least: 1, most: 99 }
const counts: Range = { least: 1, most: 50 }

/** Everything that is wrong comes at once. */
export const readWishes = (said: WishWords): Wishes | Refusal => {
  const faults: string[] = []
  const units = unitNames.find((word) => word === (said.units ?? 'mm').trim().toLowerCase()) ?? 'mm'
  if (said.units !== undefined && units !== said.units.trim().toLowerCase())
    faults.push(`--units ${said.units}: say mm or in`)
  const length = (key: 'height' | 'width' | 'ceiling', range: Range): number | null =>
    said[key] === undefined ? null : lengthOption(`--${key}`, said[key], units, range, faults)
  const count = (key: 'panels' | 'timbers'): number | null => {
    if (said[key] === undefined) return null
    const reading = countValue(said[key], counts)
    if ('value' in reading) return reading.value
    faults.push(`--${key} ${reading.fault}`)
    return null
  }
  const pair = (key: 'garage' | 'door'): readonly [number, number] | null => {
    if (said[key] === undefined) return null
    const reading = pairValue(said[key], units, rangeAt(`space.${key}`))
    if ('value' in reading) return reading.value
    faults.push(`--${key} ${reading.fault}${reading.example ? '; e.g. `2100 x 2000`' : ''}`)
    return null
  }
  const wishes: Wishes = {
    units,
    paper: paperOf(said.paper, units, faults),
    height: length('height', heights),
    rider: said.rider === undefined ? null : riderOf(said.rider, faults),
    width: lengthOption(
      '--width',
      said.width ?? usualWidth[units],
      units,
      rangeAt('ramps[quarter].width'),
      faults,
    ),
    panels: count('panels'),
    timbers: count('timbers'),
    garage: pair('garage'),
    door: pair('door'),
    ceiling: length('ceiling', rangeAt('space.ceiling')),
  }
  return faults.length > 0 ? asked(faults) : wishes
}

const paperOf = (said: string | undefined, units: Units, faults: string[]): Design['paper'] => {
  if (said === undefined) return usualPaper(units)
  const found = paperNames.find((name) => name === said.trim().toLowerCase())
  if (found === undefined) faults.push(`--paper ${said}: say one of ${paperNames.join(', ')}`)
  return found ?? usualPaper(units)
}

const riderOf = (said: string, faults: string[]): Rider | null => {
  const text = said
    .trim()
    .toLowerCase()
    .replace(/([a-z])-(?=[a-z])/g, '$1 ')
  const words = steepnesses.map(({ word }) => word)
  const word = words.find((own) => own === text)
  if (word !== undefined) return { kind: 'word', word }
  const age = countValue(text, ages)
  if ('value' in age) return { kind: 'age', age: age.value }
  const near = nearWord(text, words)
  faults.push(
    `--rider ${said}: say an age in years, or how easy: ${words.join(', ')}${near === undefined ? '' : `; did you mean ${near}?`}`,
  )
  return null
}
