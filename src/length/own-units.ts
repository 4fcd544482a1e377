import type { Units } from './units.ts'

/** Of a size told both ways, `3 mm (1/8 in)`, the one of a design's units: nothing that is printed mixes them. */
export const ownUnits = (both: string, units: Units): string => {
  const [, mm, inches] = /^(.*) \((.*)\)$/.exec(both) ?? [both, both, both]
  return units === 'mm' ? mm! : inches!
}
