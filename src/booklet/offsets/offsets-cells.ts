import { inch } from '../../geometry/inch.ts'
import type { Units } from '../../length.ts'
import type { Offsets } from '../../ramp/offsets.ts'

/** A word, a number, or nothing. */
export type Cell = string | number | null

/** One line of the file: a mark has x and y, a measure has a length; mm. */
interface Line {
  readonly kind: 'station' | 'guide' | 'corner' | 'measure'
  readonly name: string
  readonly x: number | null
  readonly y: number | null
  readonly length: number | null
}

const linesOf = (offsets: Offsets): readonly Line[] => {
  const { stations, toe, lip, notch, seat, panel, swing } = offsets
  const mark = (kind: Line['kind'], name: string, at: { readonly x: number; readonly y: number }): Line => ({
    kind,
    name,
    x: at.x,
    y: at.y,
    length: null,
  })
  const measure = (name: string, length: number): Line => ({
    kind: 'measure',
    name,
    x: null,
    y: null,
    length,
  })
  return [
    mark('corner', 'toe', toe),
    ...stations.map((station, i) => mark(station.cutAway ? 'guide' : 'station', `${i + 1}`, station)),
    mark('corner', 'lip', lip),
    ...notch.map((corner) => mark('corner', corner.name, corner)),
    ...(seat
      ? [mark('corner', 'middle of the seat', seat.centre), measure('radius of the seat', seat.radius)]
      : []),
    measure('panel length', panel.length),
    measure('panel height', panel.height),
    ...(panel.chamfer > 0
      ? [measure('45 degree cut of the back bottom corner: along both edges', panel.chamfer)]
      : []),
    measure('diagonal bottom front to top back', panel.diagonals[0]),
    measure('diagonal top front to bottom back', panel.diagonals[1]),
    measure('toe to lip straight', offsets.chord),
    measure('middle rise', offsets.rise),
    measure('straight line from mark to mark misses by', offsets.miss),
    ...(swing
      ? [
          measure('swing arm: screw in front of the front edge', swing.pivot.inFront),
          measure('swing arm: screw above the bottom edge', swing.pivot.above),
          measure('swing arm: screw to pencil', swing.arm),
          measure('swing arm: floor in front of the sheet', swing.floor.inFront),
          measure('swing arm: floor above the sheet', swing.floor.above),
          measure('swing arm: floor above a panel cut to height', swing.floorAbovePanel),
        ]
      : []),
  ]
}

/** All ramps in one table, its head first: mm, and decimal inches beside them where the design is in inches. */
export const offsetsCells = (all: readonly Offsets[], units: Units): readonly (readonly Cell[])[] => {
  const inches = units === 'in'
  const head = [
    'ramp',
    'kind',
    'name',
    'x_mm',
    'y_mm',
    'length_mm',
    ...(inches ? ['x_in', 'y_in', 'length_in'] : []),
  ]
  const toInches = (mm: number | null): number | null => (mm === null ? null : mm / inch)
  const rows = all.flatMap((offsets) =>
    linesOf(offsets).map(({ kind, name, x, y, length }): readonly Cell[] => [
      offsets.ramp,
      kind,
      name,
      ...[x, y, length],
      ...(inches ? [x, y, length].map(toInches) : []),
    ]),
  )
  return [head, ...rows]
}
