import { type Drawing, type Pen, stroke } from '../../drawing/drawing.ts'
import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { type Affine, affineApply, affineIdentity, affineInvert, affineThen } from '../../geometry/affine.ts'
import { type Box, boxOverlaps, pathBounds, pointsBounds } from '../../geometry/bounds.ts'
import { type Convex, pathOutside } from '../../geometry/clip.ts'
import { pathLength } from '../../geometry/length.ts'
import type { Path } from '../../geometry/path.ts'
import { type Point, pointBetween, pointMoved, unitVector } from '../../geometry/point.ts'

/** Round words where a quiet line breaks off, mm. */
const air = 0.7

/** Scraps of a line between two breaks that are shorter say nothing, of a dashed one those of less than a dash, mm. */
const leastScrap = { whole: 1.5, dashed: 2.5 }

/** Along a level word and square to it. */
const level = { across: unitVector(0), up: unitVector(Math.PI / 2) }

/** The box of a word with air round it: letters alone, where none goes below its line. */
export const wordZone = (word: TextMark, map: Affine = affineIdentity): Convex => {
  const [a, b, c, d] = textCorners(word, map) as [Point, Point, Point, Point]
  // textCorners goes below the line by 0.3 of the letters' height
  const [low, right] = /[gjpqy,;()Q/]/.test(word.text)
    ? [a, b]
    : [pointBetween(a, d, 0.3 / 1.3), pointBetween(b, c, 0.3 / 1.3)]
  // most words are level
  const isLevel = a.y === b.y && a.x < b.x
  const along = isLevel ? 0 : Math.atan2(b.y - a.y, b.x - a.x)
  const across = isLevel ? level.across : unitVector(along)
  const up = isLevel ? level.up : unitVector(along + Math.PI / 2)
  return [
    pointMoved(low, across, -air, up, -air),
    pointMoved(right, across, air, up, -air),
    pointMoved(c, across, air, up, air),
    pointMoved(d, across, -air, up, air),
  ]
}

/** Round all that is read of a drawing, words in groups too. */
export const wordZones = (drawing: Drawing, map: Affine = affineIdentity): readonly Convex[] => {
  const zones: Convex[] = []
  for (const mark of drawing)
    if (mark.kind === 'text') zones.push(wordZone(mark, map))
    else if (mark.kind === 'group') zones.push(...wordZones(mark.marks, affineThen(mark.map, map)))
  return zones
}

/** A zone in the frame of what it breaks off. */
export interface ClearZone {
  readonly shape: Convex
  readonly box: Box
}

/** Zones of the window in the frame that goes `toWindow`. */
export const zonesBack = (zones: readonly Convex[], toWindow: Affine): readonly ClearZone[] => {
  const back = affineInvert(toWindow)
  return zones.map((zone) => {
    const shape: Point[] = []
    for (let i = 0; i < zone.length; i++) shape.push(affineApply(back, zone[i]!))
    return { shape, box: pointsBounds(shape) }
  })
}

/** Strokes broken off where they would run through zones of their frame. */
export const brokenStrokes = (drawing: Drawing, zones: readonly ClearZone[]): Drawing =>
  drawing.flatMap((mark): Drawing => {
    if (mark.kind !== 'stroke') return [mark]
    const met = zonesMet(mark.path, zones)
    if (met.length === 0) return [stroke(mark.layer, mark.path, endedPen(mark.pen, mark.path))]
    return met
      .reduce<readonly Path[]>(
        (parts, { shape }) => parts.flatMap((part) => pathOutside(part, shape)),
        [mark.path],
      )
      .filter((path) => !isScrap(path, mark.pen.dash ? leastScrap.dashed : leastScrap.whole))
      .map((path) => stroke(mark.layer, path, endedPen(mark.pen, path)))
  })

const zonesMet = (path: Path, zones: readonly ClearZone[]): readonly ClearZone[] => {
  const box = pathBounds(path)
  const met: ClearZone[] = []
  for (let i = 0; i < zones.length; i++) if (boxOverlaps(box, zones[i]!.box)) met.push(zones[i]!)
  return met
}

/** Dashes a little longer or shorter, so that a line of them begins and ends with a whole one: it stops where it is meant to. */
const endedPen = (pen: Pen, path: Path): Pen => {
  const [on, off, ...more] = pen.dash ?? []
  if (on === undefined || off === undefined || more.length > 0) return pen
  const length = pathLength(path)
  const gaps = Math.max(1, Math.round((length - on) / (on + off)))
  const share = length / (gaps * (on + off) + on)
  const fitted = (mm: number): number => Math.round(mm * share * 1000) / 1000
  return { ...pen, dash: [fitted(on), fitted(off)] }
}

const isScrap = (path: Path, least: number): boolean => {
  const { x0, y0, x1, y1 } = pathBounds(path)
  return Math.hypot(x1 - x0, y1 - y0) < least
}
