import { readableAngle } from '../../drafting/dimension/figure.ts'
import { leader, leaderDot } from '../../drafting/leader.ts'
import { type DraftStyle, lineTypes } from '../../drafting/line-types.ts'
import { type Drawing, type Face, fill, text } from '../../drawing/drawing.ts'
import type { TextMark } from '../../drawing/text-box.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { boxGrow, boxOverlaps, pathBounds, pointsBounds } from '../../geometry/bounds.ts'
import { pathClip } from '../../geometry/clip.ts'
import { pathLength } from '../../geometry/length.ts'
import { type Path, polygonOf } from '../../geometry/path.ts'
import { type Point, pointBetween, pointDistance, pointToward } from '../../geometry/point.ts'
import type { PatternLabel } from '../../pattern/pattern.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { clearIn, clearUnder, type Occupancy, takenAt } from '../room/occupancy.ts'
import { on } from '../room/word-room.ts'
import { isInCell, rowTurn, type Tile, tilePoint } from '../tile/tile.ts'
import {
  boxesAlong,
  extentOf,
  isWithin,
  mayHold,
  placesOnWood,
  type TimberBox,
  timberBox,
} from './timber-box.ts'

/** The words of a label alone, at one of its places. */
export const labelWords = ({ words, size }: PatternLabel, middle: Point) =>
  text('mark', { x: middle.x, y: middle.y - size / 2 }, size, words, { face: 'bold', align: 'middle' })

/** A stub with less of its outline on a page is named by the page that has the rest, mm. */
const leastShown = 25

/** Round the words of a box, and round words that stand on a timber, the usual first, mm. */
const frameRoom = 1.5
const woodRooms = [2.4, 0.9]

/** Sizes tried for words in a box, for those that stand on a timber, and for a box beside it that a line leads to, mm. */
const sizes = [1, 0.8, 0.65]
interface Form {
  readonly form: 'words' | 'shorter'
  readonly sizes: readonly number[]
  readonly face: Face
}
const nameForms: readonly Form[] = (['words', 'shorter'] as const).map((form) => ({
  form,
  sizes: [letters.word, 3.2, letters.small],
  face: 'bold',
}))
const noteForms: readonly Form[] = (['words', 'shorter'] as const).map((form) => ({
  form,
  sizes: [letters.small, letters.least],
  face: 'regular',
}))
const besideSize = letters.small
const leaderStyle: DraftStyle = {
  layer: 'mark',
  size: 1.6 * letters.small,
  lines: lineTypes(pens.tick.width),
}
/** How far off a dot a box is tried, mm. */
const distances = [7, 10, 13, 17, 22, 28, 36, 46]

/**
 * The name of a timber, in the window as the drawing is read: along it, on its own wood, off what words never lie on and the cut line,
 * smaller or shorter where it must be; else in a box beside it on a leader with a dot, on no timber; else not on this page.
 * Of a plate or a piece: in a box on it. `lean`: of the names of the page.
 */
export const labelMarks = (
  label: PatternLabel,
  outline: Path,
  tile: Tile,
  room: Occupancy,
  wood: (p: Point) => boolean,
  lean: number,
): Drawing => {
  // most timbers lie on other pages
  if (!boxOverlaps(boxGrow(pathBounds(outline), 1), pointsBounds(tile.cell))) return []
  const shown = pathClip(outline, tile.cell)
  if (shown.reduce((sum, path) => sum + pathLength(path), 0) < leastShown) return []
  const box = label.of === 'piece' ? null : timberBox(outline, tile.toWindow)
  const timber = label.of === 'timber' ? box : null
  const own = timber ? alongMarks(label, timber, tile, room, lean) : boxedMarks(label, box, tile, room)
  // a piece is named on itself, on each page that shows some of its joint, or not at all
  if (own.length > 0 || label.of === 'piece') return own
  const ends = dotsOf(label, timber, tile, room)
  for (const words of timber ? [label.words, label.shorter] : [label.words])
    for (const kinds of [on.never | on.cut | on.rather, on.never | on.cut]) {
      const found = besideMarks(words, ends, timber, kinds, tile, room, wood)
      if (found.length > 0) return found
    }
  return []
}

/** Small words more along a timber or across it, on its own wood, off all else; none where that has no room. */
export const woodNote = (
  note: Pick<PatternLabel, 'words' | 'shorter'>,
  outline: Path,
  tile: Tile,
  room: Occupancy,
  lean: number,
): readonly TextMark[] => alongMarks(note, timberBox(outline, tile.toWindow), tile, room, lean, noteForms)

/** Where along a timber and across it its name is tried. */
const woodShares = [0.5, 0.44, 0.56, 0.38, 0.62, 0.32, 0.68, 0.26, 0.74, 0.2, 0.8, 0.12, 0.88, 0.1, 0.9]
const woodAsides = [0, 0.2, -0.2]

/** On its wood, along it or across it as it is read, with no box. */
const alongMarks = (
  label: Pick<PatternLabel, 'words' | 'shorter'>,
  timber: TimberBox,
  tile: Tile,
  room: Occupancy,
  lean: number,
  forms: readonly Form[] = nameForms,
): readonly TextMark[] => {
  const middles = placesOnWood(timber, woodShares, woodAsides).filter((middle) =>
    isInCell(tile, [middle], 0.5),
  )
  const turns = [timber.along, timber.along + Math.PI / 2].map((turn) => {
    // near the upright as the others of the page
    const angle = readableAngle(turn - lean) + lean
    const [wide, high] = [extentOf(timber, angle), extentOf(timber, angle + Math.PI / 2)]
    return { angle, wide, high, box: boxesAlong(angle) }
  })
  const [along] = turns
  for (const kinds of [on.never | on.cut | on.rather, on.never | on.cut]) {
    const open = middles.filter((middle) => !takenAt(room, middle, kinds))
    for (const { form, sizes: some, face } of forms)
      for (const size of some) {
        const half = textWidth(label[form], size, face) / 2
        for (const around of woodRooms)
          for (const turn of turns) {
            const { angle, wide, high, box } = turn
            // no place is wide enough
            if (2 * (half + around) > wide || size + 2 * around > high) continue
            for (const middle of open) {
              const [long, across] = [half + around, size / 2 + around]
              if (!(turn === along ? mayHold(middle, long, across) : mayHold(middle, across, long))) continue
              const corners = box(middle, long, across)
              if (
                isInCell(tile, corners, 0.5) &&
                clearUnder(room, corners, kinds) &&
                isWithin(timber, corners, 0)
              )
                return [wordsAt(label[form], size, middle, angle, face)]
            }
          }
      }
  }
  return []
}

/** Where in a plate its box is tried after its places. */
const plateShares = Array.from({ length: 19 }, (_, i) => (i + 1) / 20)
const plateAsides = [-0.3, 0.3, -0.2, 0.2, -0.4, 0.4, 0]

/** In a box at one of its places, or anywhere in the `plate`. */
const boxedMarks = (
  { words, size: usual, places }: PatternLabel,
  plate: TimberBox | null,
  tile: Tile,
  room: Occupancy,
): Drawing => {
  const level = rowTurn(tile)
  const turns = plate ? [level] : [level, readableAngle(level + Math.PI / 2)]
  const middles = [
    ...places.map((p) => tilePoint(tile, p)),
    ...(plate ? placesOnWood(plate, plateShares, plateAsides) : []),
  ]
  for (const kinds of plate ? [on.never | on.cut | on.rather, on.never | on.cut] : [on.never | on.cut])
    for (const size of sizes.map((share) => Math.max(usual * share, letters.small)))
      for (const turn of turns)
        for (const middle of middles) {
          if (takenAt(room, middle, kinds)) continue
          const corners = boxAt(words, size, middle, turn)
          if (
            isInCell(tile, corners, 2) &&
            (!plate || isWithin(plate, corners, 2)) &&
            clearUnder(room, corners, kinds)
          )
            return boxed(words, size, middle, turn)
        }
  return []
}

/**
 * Beside it on none of the kinds, level as the page is read, at the first place among the best: on the side that is kept, its line off
 * what is measured or read and, of a timber, across no other.
 */
const besideMarks = (
  words: string,
  ends: readonly Point[],
  timber: TimberBox | null,
  kinds: number,
  tile: Tile,
  room: Occupancy,
  wood: (p: Point) => boolean,
): Drawing => {
  const half = textWidth(words, besideSize, 'bold') / 2
  const box = boxesAlong(0)
  let best: { readonly end: Point; readonly near: Point; readonly middle: Point } | undefined
  let least = 7
  for (const end of ends)
    for (const distance of distances)
      for (let k = 0; k < 16 && least > 0; k++) {
        const direction = (k * Math.PI) / 8
        const middle = pointToward(end, direction, distance + half * Math.abs(Math.cos(direction)))
        if (takenAt(room, middle, timber ? kinds | on.timber : kinds)) continue
        const corners = box(middle, half + frameRoom, besideSize / 2 + frameRoom)
        if (!isInCell(tile, corners, 0.5) || !clearUnder(room, corners, timber ? kinds | on.timber : kinds))
          continue
        const near = corners
          .map((p, i) => pointBetween(p, corners[(i + 1) % 4]!, 0.5))
          .reduce((a, b) => (pointDistance(b, end) < pointDistance(a, end) ? b : a))
        if (!clearUnder(room, [end, near], on.cut | on.said)) continue
        if (timber && !leavesClear(timber, end, near, room)) continue
        const faults = (clearUnder(room, [end, near], on.never) ? 0 : 3) + (corners.every(wood) ? 0 : 2)
        if (faults >= least) continue
        least = faults
        best = { end, near, middle }
      }
  return best
    ? [...leader(best.end, [best.near], leaderStyle), ...boxed(words, besideSize, best.middle, 0)]
    : []
}

/** Whether a line from within a timber crosses no other. */
const leavesClear = (timber: TimberBox, end: Point, near: Point, room: Occupancy): boolean => {
  const count = Math.ceil(pointDistance(end, near) / 2)
  for (let k = 1; k < count; k++) {
    const p = pointBetween(end, near, k / count)
    if (!isWithin(timber, [p], -1)) return clearUnder(room, [p, near], on.timber)
  }
  return true
}

/** No more of the places for a dot than this are tried. */
const mostDots = 6

/** Where along a timber and across it a line to its name may begin; and how far within its edges, mm. */
const dotShares = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9, 0.05, 0.95]
const dotAsides = [0, 0.2, -0.2, 0.38, -0.38]
const dotInside = 3

/** Where a line to a label may begin: well within what it names, off what is read and the cut line, off other strokes if it can. */
const dotsOf = (
  { dots }: PatternLabel,
  timber: TimberBox | null,
  tile: Tile,
  room: Occupancy,
): readonly Point[] => {
  const radius = leaderDot(leaderStyle.size)
  const isFree = (p: Point, kinds: number): boolean =>
    clearIn(room, boxGrow(pointsBounds([p]), radius + dotAir), kinds)
  const own = (
    timber
      ? placesOnWood(timber, dotShares, dotAsides).filter((p) => isWithin(timber, [p], dotInside))
      : dots.map((p) => tilePoint(tile, p))
  ).filter((p) => isInCell(tile, [p], timber ? dotInside : radius))
  for (const kinds of [on.never | on.cut | on.rather, on.never | on.cut]) {
    const free = own.filter((p) => isFree(p, kinds)).slice(0, mostDots)
    if (free.length > 0) return free
  }
  return []
}

/** Round a dot, mm. */
const dotAir = 0.8

const boxAt = (words: string, size: number, middle: Point, turn: number, less = 0): readonly Point[] =>
  boxesAlong(turn)(middle, textWidth(words, size, 'bold') / 2 + frameRoom - less, size / 2 + frameRoom - less)

const wordsAt = (words: string, size: number, middle: Point, turn: number, face: Face = 'bold'): TextMark =>
  text('mark', pointToward(middle, turn - Math.PI / 2, size / 2), size, words, {
    face,
    align: 'middle',
    angle: turn,
  })

const boxed = (words: string, size: number, middle: Point, turn: number): Drawing => {
  const frame = (less: number): Path => {
    const [a, ...others] = boxAt(words, size, middle, turn, less)
    return polygonOf(a!, ...others)
  }
  return [
    fill('mark', frame(0), 0),
    fill('mark', frame(pens.mark.width), 1),
    wordsAt(words, size, middle, turn),
  ]
}
