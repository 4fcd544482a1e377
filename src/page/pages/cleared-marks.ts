import type { Units } from '../../design/design.ts'
import { type Drawing, group, type Mark, stroke } from '../../drawing/drawing.ts'
import { boxOverlaps, boxUnion, pathBounds, pointsBounds } from '../../geometry/bounds.ts'
import type { Convex } from '../../geometry/clip.ts'
import { pens } from '../../pattern/pens.ts'
import { rulerCombs } from '../ruler/ruler-combs.ts'
import { noTick, type RulerTick } from '../ruler/rulers.ts'
import { brokenStrokes, type ClearZone, wordZone, wordZones, zonesBack } from '../tile/clear-zones.ts'
import type { Tile } from '../tile/tile.ts'
import { bandZones, jointZones, signZones } from '../tile/tile-joints.ts'
import type { TileLines } from './tile-lines.ts'
import type { TileWords } from './words-on-tile.ts'

/** All that was set on a tile; in its window, but for lines and levels. */
interface SetMarks {
  readonly lines: TileLines
  readonly words: TileWords
  readonly signs: readonly Drawing[]
  readonly rulers: readonly RulerTick[]
  readonly joints: Drawing
  readonly snaps: Drawing
  /** the words of the snap line */
  readonly snap: Drawing
  readonly datums: Drawing
  readonly title: Drawing
}

/** Quiet lines broken off round all that is read, on the page. */
export const clearedMarks = (
  tile: Tile,
  units: Units,
  { lines, words, signs, rulers, joints, snaps, snap, datums, title }: SetMarks,
): Drawing => {
  const { named, levels, labels, others } = words
  const zones = (shapes: readonly Convex[]): readonly ClearZone[] => zonesBack(shapes, tile.toWindow)
  const [snapZones, titleZones] = [wordZones(snap), wordZones(title)]
  const ruled = rulerCombs(ticksOff(rulers, [...snapZones, ...titleZones]), units)
  const read = zones([
    ...wordZones([...named, ...labels, ...others, ...ruled]),
    ...snapZones,
    ...wordZones(datums),
    ...titleZones,
    ...wordZones(levels, tile.toWindow),
  ])
  const signed = zones(signZones(tile))
  return [
    group(tile.toPage, [
      group(tile.toWindow, [
        // grey under a scale hides nothing of it
        ...(lines.bands.length === 0
          ? []
          : brokenStrokes(lines.bands, [...signed, ...zones(bandZones(tile)), ...read])),
        ...brokenStrokes(lines.quiet, [...zones(jointZones(tile)), ...signed, ...read]),
        ...lines.cuts.map((path) => stroke('cut', path, pens.cut)),
        ...lines.marks,
        ...levels,
      ]),
      ...named,
      ...labels,
      ...signs.flat(),
      ...others,
      ...ruled,
      ...joints,
      ...snaps,
      ...snap,
      ...datums,
      ...title,
    ]),
  ]
}

/** Ticks of rulers but those on which the title lies, or the snap line's words: where these have no free place. */
const ticksOff = (rulers: readonly RulerTick[], zones: readonly Convex[]): readonly RulerTick[] => {
  const titled = zones.map(pointsBounds)
  // most lie off all of them
  const about = titled.length > 0 ? titled.reduce(boxUnion) : null
  const isTitled = (mark: Mark): boolean => {
    if (mark.kind !== 'stroke' && mark.kind !== 'text') return false
    const box = mark.kind === 'stroke' ? pathBounds(mark.path) : pointsBounds(wordZone(mark))
    return about !== null && boxOverlaps(about, box) && titled.some((other) => boxOverlaps(other, box))
  }
  return rulers.map((tick) => (tick.marks.some(isTitled) ? noTick : tick))
}
