import { quote } from '../../length/quote.ts'
import { showLength, type Units } from '../../length.ts'
import { kinds, type RampDesign } from '../design.ts'
import type { Entry, EntryMap } from '../file/entry.ts'
import { kindTraits } from '../kind-traits.ts'
import { type Range, showRange } from '../plausible.ts'
import type { Report } from '../report.ts'
import { type NamedRamp, noSuchRamp } from './names.ts'

const around = (map: EntryMap | undefined): (Entry & { readonly kind: 'text' }) | undefined => {
  const stores = map?.entries.get('stores-inside')
  const ramp = stores?.kind === 'map' ? stores.entries.get('ramp') : undefined
  return ramp?.kind === 'text' ? ramp : undefined
}

/** Every `stores-inside` leads outward, from ramp to ramp, and ends at one that says its own width. */
export const checkStores = (
  ramps: readonly NamedRamp[],
  maps: readonly (EntryMap | undefined)[],
  report: Report,
): void => {
  const indexOf = (name: string): number => ramps.findIndex((ramp) => ramp.name === name)
  ramps.forEach((ramp, i) => {
    const outer = around(maps[i])
    if (outer === undefined) return
    const fail = (message: string): void =>
      report('stores-inside', `${ramp.path}.stores-inside.ramp`, outer.place, message)
    if (outer.text === ramp.name) {
      fail(`the ramp ${quote(outer.text)} cannot be stored inside itself; name another ramp`)
      return
    }
    if (indexOf(outer.text) < 0) {
      const others = ramps.filter((other) => other !== ramp)
      fail(noSuchRamp(outer.text, others, 'other'))
      return
    }
    const { kind } = ramps[indexOf(outer.text)]!
    const { keepsNone } = kindTraits[kind]
    if (keepsNone !== null) {
      const others = kinds.filter((other) => kindTraits[other].keepsNone === null)
      fail(`the ramp ${quote(outer.text)} is a ${kind}, ${keepsNone}; name a ${others.join(' or a ')}`)
      return
    }
    const seen = new Set([i])
    for (let at = indexOf(outer.text); at >= 0; at = indexOf(around(maps[at])?.text ?? '')) {
      if (at === i)
        fail(`the ramps go round in a circle: ${quote(outer.text)} is itself stored inside this one`)
      if (seen.has(at)) return
      seen.add(at)
    }
  })
}

/** Widths that follow, ramp by ramp outward: outer width, less the outer ramp's two outermost sides, less the clearance. */
export const withWidths = (ramps: readonly RampDesign[]): readonly RampDesign[] => {
  const widthOf = (ramp: RampDesign): number => {
    if (!ramp.storesInside) return ramp.width
    const { ramp: name, clearance } = ramp.storesInside
    const outer = ramps.find((other) => other.name === name)!
    return widthOf(outer) - 2 * outer.sides.thickness - clearance
  }
  return ramps.map((ramp) => (ramp.storesInside ? { ...ramp, width: widthOf(ramp) } : ramp))
}

/**
 * Fills in the widths that follow, and reports those that no ramp may have.
 * Call after `checkStores` found nothing.
 */
export const widthsFromStores = (
  ramps: readonly RampDesign[],
  maps: readonly EntryMap[],
  range: Range,
  units: Units,
  report: Report,
): readonly RampDesign[] => {
  const followed = withWidths(ramps)
  followed.forEach(({ storesInside, width }, i) => {
    if (storesInside && (width < range.least || width > range.most))
      report(
        'range',
        `ramps[${i}].stores-inside`,
        maps[i]!.entries.get('stores-inside')?.place ?? maps[i]!.place,
        `the width that follows, ${showLength(width, units, { unit: true })}, is outside ${showRange(range, units)}; ` +
          `widen ${quote(storesInside.ramp)} or take less clearance`,
      )
  })
  return followed
}
