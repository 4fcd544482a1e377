import type { Space } from '../design/design.ts'
import { same } from '../ramp/check/offer.ts'
import { bestWay, type Storing } from '../ramp/stored.ts'
import type { RampSize, Size } from '../ramp/storing/size.ts'

/** What stands on the floor when all is put away: a ramp, with those inside it. */
export interface Stored {
  readonly ramps: readonly string[]
  readonly size: Size
}

/** The floor that is left, where the design says how large the garage is. */
export interface FreeFloor {
  /** m² */
  readonly area: number
  /** the largest rectangle that stays free with everything in a row along one wall, mm; null where they do not stand in one row */
  readonly rectangle: readonly [number, number] | null
}

interface Standing extends Pick<RampSize, 'standing' | 'before'> {
  readonly ramp: string
}

/** One for each ramp that is in no other: what is in a ramp lies there with all that is in it. */
export const storedSets = (sizes: readonly Standing[], kept: readonly Storing[]): readonly Stored[] => {
  const within = kept.filter(({ stored }) => stored !== null)
  const inside = (name: string): readonly string[] =>
    within.filter(({ outer }) => outer === name).flatMap(({ ramp }) => [ramp, ...inside(ramp)])
  return sizes
    .filter(({ ramp: name }) => !within.some(({ ramp }) => ramp === name))
    .map((ramp) => {
      const ramps = [ramp.ramp, ...inside(ramp.ramp)]
      const [from, to] = spanOf(ramp, sizes, within)
      const high = sizes.filter((own) => ramps.includes(own.ramp)).map(({ standing }) => standing[2])
      return { ramps, size: [to - from, ramp.standing[1], Math.max(...high)] }
    })
}

/** From end to end along the floor, from its own front bottom corner, with all that is in it. */
const spanOf = (
  { ramp: name, standing, before }: Standing,
  sizes: readonly Standing[],
  within: readonly Storing[],
): readonly [number, number] => {
  const ends = within
    .filter(({ outer }) => outer === name)
    .flatMap((storing) => {
      const { way, corner } = bestWay(storing)
      const inner = spanOf(sizes.find(({ ramp }) => ramp === storing.ramp)!, sizes, within)
      const turn = way.startsWith('back-first') ? -1 : 1
      return [...storing.span, ...inner.map((x) => corner + turn * x)]
    })
  return [Math.min(-before, ...ends), Math.max(standing[0] - before, ...ends)]
}

/** Null where one of them, or all together, do not stand in it. */
export const freeFloor = ({ garage: [wide, deep] }: Space, sets: readonly Stored[]): FreeFloor | null => {
  const stands = ({ size: [l, w] }: Stored): boolean =>
    Math.min(l, w) <= Math.min(wide, deep) + same && Math.max(l, w) <= Math.max(wide, deep) + same
  const taken = sets.reduce((sum, { size: [l, w] }) => sum + l * w, 0)
  if (!sets.every(stands) || taken > wide * deep) return null
  const rows = [
    // along the one wall or the other, long sides or short sides to it
    ...(
      [
        [wide, deep],
        [deep, wide],
      ] as const
    ).flatMap(([along, out]) =>
      ([0, 1] as const).map((i) => {
        const length = sets.reduce((sum, { size }) => sum + size[i]!, 0)
        const depth = Math.max(0, ...sets.map(({ size }) => size[1 - i]!))
        return { along, out, length, depth }
      }),
    ),
  ].filter(({ along, out, length, depth }) => length <= along && depth <= out)
  const rectangles = rows.flatMap(({ along, out, length, depth }): (readonly [number, number])[] => [
    [along, out - depth],
    [along - length, out],
  ])
  const area = ([a, b]: readonly [number, number]): number => a * b
  return {
    area: (wide * deep - taken) / 1e6,
    rectangle: rectangles.length === 0 ? null : rectangles.reduce((a, b) => (area(b) > area(a) ? b : a)),
  }
}
