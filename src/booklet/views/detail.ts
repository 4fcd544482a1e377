import type { Sheet } from '../../design/design.ts'
import { alsoDrawn, type Clearance, firstClear, nothingDrawn } from '../../drafting/clearance.ts'
import { endGrain } from '../../drafting/hatch/end-grain.ts'
import { hatch } from '../../drafting/hatch/hatch.ts'
import { plies, plyCount } from '../../drafting/hatch/plies.ts'
import type { Ways } from '../../drafting/ways.ts'
import { type Drawing, stroke } from '../../drawing/drawing.ts'
import { affineScale } from '../../geometry/affine.ts'
import { type Box, boxGrow, boxOverlaps, pointsBounds } from '../../geometry/bounds.ts'
import { boxCorners, type Convex, pathClip } from '../../geometry/clip.ts'
import type { Path } from '../../geometry/path.ts'
import { segmentsPath } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import { type Timber, timberCorners } from '../../ramp/frame/timber.ts'
import type { SolvedRamp } from '../../ramp/ramp.ts'
import { frameCurve, type Profile } from './profile.ts'
import { scaled, type View, type ViewPart, viewOf, viewStyle } from './view.ts'

const layer = 'note'
const { lines } = viewStyle

/** What a window shows of a thing in mm, drawn to scale; the thing's own origin stays at 0,0. */
export interface Window {
  readonly box: Box
  readonly ratio: number
}

/** Strokes cut at the window's edges. */
export const within = ({ box, ratio }: Window, marks: Drawing): Drawing => {
  const edges = boxCorners({ x0: box.x0 * ratio, y0: box.y0 * ratio, x1: box.x1 * ratio, y1: box.y1 * ratio })
  return marks.flatMap((mark) =>
    mark.kind === 'stroke'
      ? pathClip(mark.path, edges).map((path) => stroke(mark.layer, path, mark.pen))
      : [],
  )
}

/** A sheet that is cut across: its outline and what it is made of. `at` gives its lines by a share of its thickness. */
const cutSheet = (outline: Path, at: (share: number) => Path, sheet: Sheet): Drawing => [
  stroke(layer, outline, lines.outline),
  ...(sheet.material === 'plywood'
    ? plies(at, plyCount(sheet.thickness), viewStyle)
    : sheet.material === 'hardboard'
      ? hatch([outline], { layer, pen: { width: 0.13 }, spacing: 0.7 })
      : []),
]

/** Every layer of skin, cut across. */
const cutSkin = (ramp: SolvedRamp, outlines: readonly Path[], ratio: number): Drawing => {
  const curve = frameCurve(ramp)
  const map = affineScale(ratio)
  return ramp.skin
    .filter(({ length }) => length > 0)
    .flatMap(({ sheet, below, start, end }, i) =>
      cutSheet(
        pathMap(outlines[i]!, map),
        (share) =>
          pathMap(segmentsPath(curve.offset(below + share * sheet.thickness).segments(start, end)), map),
        sheet,
      ),
    )
}

/** A board that lies level, cut across. */
export const cutBoard = (
  outline: Path,
  sheet: Sheet,
  level: number,
  ends: readonly [number, number],
  ratio: number,
): Drawing =>
  cutSheet(
    pathMap(outline, affineScale(ratio)),
    (share) => {
      const y = (level + share * sheet.thickness) * ratio
      return {
        start: { x: ends[0] * ratio, y },
        pieces: [{ kind: 'line', to: { x: ends[1] * ratio, y } }],
        closed: false,
      }
    },
    sheet,
  )

/** A timber cut across, with its end grain. */
const cutTimber = (timber: Timber, ratio: number): Drawing => {
  // timber corners run counter-clockwise as seen with y up
  const corners: Convex = timberCorners(timber).map((p) => scaled(p, ratio))
  const [first, ...rest] = corners
  const outline: Path = {
    start: first!,
    pieces: rest.map((to) => ({ kind: 'line', to })),
    closed: true,
  }
  return [...endGrain(corners, viewStyle), stroke(layer, outline, lines.outline)]
}

/** What ends at the window's edge is left to its clipping, mm. */
const hair = 1

/** Timbers, side and skin as they are cut across, in a window. */
export const cutFrame = (
  window: Window,
  ramp: SolvedRamp,
  profile: Profile,
  timbers: readonly Timber[],
): readonly ViewPart[] => [
  {
    name: 'timbers',
    marks: timbers
      .filter((timber) => boxOverlaps(pointsBounds(timberCorners(timber)), boxGrow(window.box, hair)))
      .flatMap((timber) => within(window, cutTimber(timber, window.ratio))),
  },
  {
    name: 'side',
    marks: within(window, [stroke(layer, pathMap(profile.side, affineScale(window.ratio)), lines.thin)]),
  },
  { name: 'skin', marks: within(window, cutSkin(ramp, profile.skin, window.ratio)) },
]

/** A note, and the ways to draw it, the best first. */
export type Remark = (name: string, ways: Ways) => void

/** A body with the notes about it, each in the first of its ways that is clear; one that has none is left out. */
export const annotated = (body: readonly ViewPart[], write: (remark: Remark) => void): View => {
  let clearance: Clearance = nothingDrawn
  for (const { marks } of body) clearance = alsoDrawn(clearance, marks, 'thing')
  const notes: ViewPart[] = []
  write((name, ways) => {
    const marks = firstClear(clearance, ways)
    if (!marks) return
    clearance = alsoDrawn(clearance, marks, 'note')
    notes.push({ name, marks })
  })
  return viewOf([...body, ...notes])
}
