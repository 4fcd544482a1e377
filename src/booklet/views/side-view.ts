import { isCurved } from '../../design/kind-traits.ts'
import { alsoDrawn, type Clearance, firstClear, nothingDrawn } from '../../drafting/clearance.ts'
import { groupDimensions } from '../../drafting/dimension/group-dimensions.ts'
import { hatch } from '../../drafting/hatch/hatch.ts'
import { cross } from '../../drawing/cross.ts'
import { type Drawing, fill, stroke } from '../../drawing/drawing.ts'
import { affineScale } from '../../geometry/affine.ts'
import { type Box, boxUnion, pathBounds } from '../../geometry/bounds.ts'
import { type Path, pathOf, rectangle } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import type { Units } from '../../length.ts'
import type { SolvedRamp } from '../../ramp/ramp.ts'
import { type Profile, rampProfile } from './profile.ts'
import { flatNotes, quarterNotes } from './side-notes.ts'
import { matesSize, sizeMates } from './size-mates.ts'
import { scaled, type View, type ViewPart, viewOf, viewStyle } from './view.ts'

export interface SideViewFacts {
  readonly ramp: SolvedRamp
  readonly units: Units
  /** mm on paper for one of the ramp */
  readonly ratio: number
  /** the ramp's place in the design file, for the keys of its parts */
  readonly index: number
  /** a person and a door beside it */
  readonly mates?: boolean
  /** as few words as tell it, for a small drawing */
  readonly brief?: boolean
}

/** The ramp from its right side with its main dimensions; what has no clear place is left to the tables. */
export const sideView = (facts: SideViewFacts): View => {
  const { ramp, units, ratio, index } = facts
  const profile = rampProfile(ramp, units)
  const key = (path: string): string => `ramps.${index}.${path}`
  const parts = bodyParts(profile, ratio, key)
  const outline = parts
    .filter(({ name }) => name !== 'floor')
    .flatMap(({ marks }) => marks)
    .flatMap((mark) => (mark.kind === 'stroke' ? [pathBounds(mark.path)] : []))
    .reduce(boxUnion)
  const notes = isCurved(ramp) ? quarterNotes(ramp, facts, outline, key) : flatNotes(ramp, facts, key)
  const group = groupDimensions(
    notes.measures.map(({ measure }) => measure),
    outline,
    viewStyle,
    hatchOf(outline),
  )
  const dimensions = group.placed.flatMap((placed, i): ViewPart[] =>
    placed ? [{ name: 'dimension', key: notes.measures[i]!.key, marks: placed.marks }] : [],
  )
  const besideAll = group.box.x1 + 6
  const mates: readonly ViewPart[] = facts.mates ? [{ name: 'size', marks: sizeMates(besideAll, ratio) }] : []
  const x1 = facts.mates ? besideAll + matesSize.width * ratio : group.box.x1
  const floor = floorPart({ x0: group.box.x0, x1 }, outline)
  const drawn = [...parts, floor, ...mates]
  let clearance: Clearance = nothingDrawn
  for (const part of drawn) clearance = alsoDrawn(clearance, part.marks, 'thing')
  for (const part of dimensions) clearance = alsoDrawn(clearance, part.marks, 'note')
  const placed: ViewPart[] = []
  for (const note of notes.placed) {
    const marks = firstClear(clearance, note.ways)
    if (!marks) continue
    clearance = alsoDrawn(clearance, marks, 'note')
    placed.push({ name: 'dimension', key: note.key, marks })
  }
  return viewOf([...drawn, ...dimensions, ...placed])
}

const layer = 'note'
const { lines } = viewStyle

/** The things themselves, what lies behind first. */
const bodyParts = (profile: Profile, ratio: number, key: (path: string) => string): readonly ViewPart[] => {
  const map = affineScale(ratio)
  const on = (path: Path): Path => pathMap(path, map)
  const seen = (path: Path): Drawing => [fill(layer, on(path), 1), stroke(layer, on(path), lines.outline)]
  // many thin layers side by side would be a blot in wide lines
  const sheet = (path: Path): Drawing => [fill(layer, on(path), 1), stroke(layer, on(path), lines.thin)]
  // a short timber shows more than one dash a side
  const behind = { width: lines.hidden.width, dash: [1.2, 0.5] }
  return [
    { name: 'side', key: key('height'), marks: seen(profile.side) },
    ...profile.studs.map((path, i) => ({
      name: `stud ${i + 1}`,
      key: key('studs'),
      marks: [stroke(layer, on(path), behind)],
    })),
    ...profile.timbers.map((path, i) => ({
      name: `timber ${i + 1}`,
      key: key('studs'),
      marks: [stroke(layer, on(path), behind)],
    })),
    ...profile.skin.map((path, i) => ({ name: `layer ${i + 1}`, key: key(`skin.${i}`), marks: sheet(path) })),
    ...(profile.board ? [{ name: 'deck board', key: key('deck-board'), marks: seen(profile.board) }] : []),
    ...(profile.runOut ? [{ name: 'run-out', key: key('run-out'), marks: sheet(profile.runOut) }] : []),
    ...(profile.pipe
      ? [
          {
            name: 'pipe',
            key: key('coping'),
            marks: [
              ...seen(profile.pipe.path),
              ...cross(
                layer,
                scaled(profile.pipe.centre, ratio),
                profile.pipe.radius * ratio + 1.2,
                lines.axis,
              ),
            ],
          },
        ]
      : []),
  ]
}

/** How far the floor is drawn past all else, and how deep its hatch; mm. */
const floorPast = 6
const floorDeep = 2

/** Where the floor's hatch will lie, however far it goes: a short height has its figure above, not in it. */
const hatchOf = ({ x0, x1 }: Box): readonly Box[] => {
  const band = { y0: -floorDeep - 0.3, y1: -0.05 }
  return [
    { ...band, x0: Number.NEGATIVE_INFINITY, x1: x0 - 0.1 },
    { ...band, x0: x1 + 0.1, x1: Number.POSITIVE_INFINITY },
  ]
}

/** The floor on both sides of the ramp, hatched below. */
const floorPart = ({ x0, x1 }: Pick<Box, 'x0' | 'x1'>, outline: Box): ViewPart => {
  const ends = [
    [x0 - floorPast, outline.x0],
    [outline.x1, x1 + floorPast],
  ] as const
  return {
    name: 'floor',
    marks: [
      stroke(layer, pathOf({ x: x0 - floorPast, y: 0 }, { x: x1 + floorPast, y: 0 }), lines.outline),
      ...ends.flatMap(([from, to]) =>
        hatch([rectangle(from, -floorDeep, to, 0)], { layer, pen: { width: 0.13 }, spacing: 1.2 }),
      ),
    ],
  }
}
