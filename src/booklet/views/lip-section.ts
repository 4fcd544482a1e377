import { calloutWays } from '../../drafting/callout.ts'
import { dimension } from '../../drafting/dimension/dimension.ts'
import { hatch } from '../../drafting/hatch/hatch.ts'
import { levelMark } from '../../drafting/level-mark.ts'
import { type Ways, waysAt } from '../../drafting/ways.ts'
import { cross } from '../../drawing/cross.ts'
import { type Drawing, fill, stroke } from '../../drawing/drawing.ts'
import { circle, polygonOf, rectangle } from '../../geometry/path.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import { showLength, type Units } from '../../length.ts'
import { same } from '../../ramp/check/offer.ts'
import { pipeAir, pipeEdges } from '../../ramp/frame/pipe-timber.ts'
import { type Timber, timberCorners, timberLabel } from '../../ramp/frame/timber.ts'
import type { SolvedQuarter } from '../../ramp/ramp.ts'
import type { SolvedCoping } from '../../ramp/side/coping.ts'
import { annotated, cutBoard, cutFrame, type Remark, type Window, within } from './detail.ts'
import { rampProfile } from './profile.ts'
import { scaled, type View, type ViewPart, viewStyle } from './view.ts'

const layer = 'note'
const { lines } = viewStyle

/** How far the section reaches around the lip, mm of the ramp. */
const around = { before: 120, behind: 110, below: 125, above: 40 } as const

const lipWindow = ({ transition: { lip, heights } }: SolvedQuarter, ratio: number): Window => ({
  ratio,
  box: {
    x0: lip.x - around.before,
    x1: lip.x + around.behind,
    y0: heights.frame - around.below,
    y1: heights.deck + around.above,
  },
})

/** The lip cut across between two sides: layers and their ends, pipe, notch behind, board, timbers; reveals and three heights. */
export const lipSection = (
  ramp: SolvedQuarter,
  units: Units,
  ratio: number,
  /** of the screws that hold the pipe, mm; null where there are none */
  screw: number | null,
): View => {
  const window = lipWindow(ramp, ratio)
  const body = [...lipBody(ramp, units, window), ...(screw === null ? [] : screwParts(ramp, screw, ratio))]
  return annotated(body, (remark) => {
    if (ramp.coping) pipeNotes(remark, ramp, ramp.coping, units, window)
    if (ramp.coping && screw !== null) screwNote(remark, ramp, ramp.coping, units, ratio)
    heightNotes(remark, ramp, units, window)
    timberNotes(remark, ramp, window)
  })
}

const lipBody = (ramp: SolvedQuarter, units: Units, window: Window): readonly ViewPart[] => {
  const { ratio } = window
  const { coping, deckBoard: board } = ramp
  const profile = rampProfile(ramp, units)
  const { frame } = ramp.transition.heights
  return [
    ...cutFrame(window, ramp, profile, [...ramp.studs, ...ramp.deckTimbers]),
    ...(board && profile.board
      ? [
          {
            name: 'deck board',
            marks: within(
              window,
              cutBoard(profile.board, board.sheet, frame, [board.from, board.from + board.length], ratio),
            ),
          },
        ]
      : []),
    ...packingParts(ramp, units, ratio),
    ...(coping
      ? [
          {
            name: 'pipe',
            marks: [
              stroke(
                layer,
                circle(scaled(coping.centre, ratio), (coping.outside / 2) * ratio),
                lines.outline,
              ),
              ...cross(layer, scaled(coping.centre, ratio), (coping.outside / 2) * ratio + 2, lines.axis),
            ],
          },
        ]
      : []),
  ]
}

/** Half of a packing's length along the ramp, mm. */
const packing = 15

/** What is packed on the last stud under the pipe's screws, up to the floor of the notch. */
const packingParts = (ramp: SolvedQuarter, units: Units, ratio: number): readonly ViewPart[] => {
  const { coping, studs } = ramp
  const lip = studs.find(({ role }) => role === 'lip')
  if (!coping || !lip || pipeAir(ramp, units) < same) return []
  const { x } = coping.centre
  const floor = coping.centre.y - coping.outside / 2
  const corners = timberCorners(lip)
  // the face that a plumb line through the pipe meets first
  const [face] = corners
    .map((a, i) => [a, corners[(i + 1) % corners.length]!].sort((p, q) => p.x - q.x) as [Point, Point])
    .filter(([a, b]) => a.x <= x && b.x >= x && a.x !== b.x)
    .map(([a, b]) => ({ a, b, rise: (b.y - a.y) / (b.x - a.x) }))
    .sort((one, other) => heightAt(other, x) - heightAt(one, x))
  if (!face) return []
  const [x0, x1] = [Math.max(x - packing, face.a.x), Math.min(x + packing, face.b.x)]
  const [first, ...others] = [
    { x: x0, y: Math.min(floor, heightAt(face, x0)) },
    { x: x1, y: Math.min(floor, heightAt(face, x1)) },
    { x: x1, y: floor },
    { x: x0, y: floor },
  ].map((p) => scaled(p, ratio))
  const outline = polygonOf(first!, ...others)
  const shade = hatch([outline], { layer, pen: { width: 0.13 }, spacing: 1 })
  return [{ name: 'packing', marks: [...shade, stroke(layer, outline, lines.outline)] }]
}

const heightAt = ({ a, rise }: { readonly a: Point; readonly rise: number }, x: number): number =>
  a.y + rise * (x - a.x)

/** Hole of the near wall, of a screw's shank and head, and the far wall; mm. */
const bored = { near: 13, shank: 4.5, head: 9, wall: 4 } as const

/** A screw of the pipe through both walls, its head on the far one. */
const screwParts = ({ coping }: SolvedQuarter, long: number, ratio: number): readonly ViewPart[] => {
  if (!coping) return []
  const { centre, outside } = coping
  const at = (x: number, y: number): Point => scaled({ x: centre.x + x, y: centre.y + y }, ratio)
  const r = outside / 2
  const box = (half: number, low: number, high: number) => {
    const [a, b] = [at(-half, low), at(half, high)]
    return rectangle(a.x, a.y, b.x, b.y)
  }
  const head = -r + bored.wall
  return [
    {
      name: 'hole',
      marks: [fill(layer, box(bored.near / 2, r - bored.wall, r + bored.wall / 2), 1)],
    },
    {
      name: 'screw',
      marks: [
        fill(layer, box(bored.head / 2, head, head + bored.wall / 2), 0),
        fill(layer, box(bored.shank / 2, head - long, head), 0.2),
      ],
    },
  ]
}

/** How far the pipe stands up and out. */
const pipeNotes = (
  remark: Remark,
  { transition: { heights, curve, face } }: SolvedQuarter,
  coping: SolvedCoping,
  units: Units,
  { box, ratio }: Window,
): void => {
  const fine = (mm: number): string => showLength(mm, units, { decimals: 1 })
  const at = (x: number, y: number): Point => scaled({ x, y }, ratio)
  const right = box.x1 * ratio
  const r = coping.outside / 2
  const top = coping.centre.y + r
  remark(
    'up',
    waysAt(pastly([right + 6, right + 12, (coping.centre.x + r) * ratio + 10]), ([place, x]) =>
      dimension(
        {
          from: at(coping.centre.x, top),
          to: { x: right, y: heights.deck * ratio },
          angle: Math.PI / 2,
          through: { x, y: 0 },
          figure: `up ${fine(coping.up)}`,
          place,
        },
        viewStyle,
      ),
    ),
  )
  // square to the face, from the face continued to the pipe
  const foot = curve.nearest(coping.centre).place
  const slope = curve.slope(foot)
  const onFace = scaled(face.point(foot), ratio)
  const out = pointToward(onFace, slope + Math.PI / 2, coping.out * ratio)
  remark(
    'out',
    waysAt(pastly([8, 12, 16, 20]), ([place, far]) =>
      dimension(
        {
          from: onFace,
          to: out,
          angle: slope + Math.PI / 2,
          through: pointToward(onFace, slope, r * ratio + far),
          figure: `out ${fine(coping.out)}`,
          place,
        },
        viewStyle,
      ),
    ),
  )
}

/** Lines so far off, their figures past the one end, else past the other. */
const pastly = (offs: readonly number[]): readonly (readonly ['past-to' | 'past-from', number])[] =>
  (['past-to', 'past-from'] as const).flatMap((place) => offs.map((off) => [place, off] as const))

/** Where the pipe's screw enters its timber. */
const screwNote = (
  remark: Remark,
  { deckTimbers, studs }: SolvedQuarter,
  { centre, outside }: SolvedCoping,
  units: Units,
  ratio: number,
): void => {
  const at = deckTimbers.findIndex(({ role }) => role === 'pipe')
  const timber = deckTimbers[at]
  if (!timber) return
  const { front } = pipeEdges({ centre }, timber)
  remark(
    'screw',
    calloutWays(
      scaled({ x: centre.x, y: centre.y - outside / 2 - 0.3 * timber.depth }, ratio),
      [`screw, ${showLength(front, units)} behind the front`, `face of timber ${studs.length + at + 1}`],
      viewStyle,
      [-50, -35, -65, -20, -80, -120, -145, -160],
    ),
  )
}

/** The last stud and the timber behind the pipe by their numbers, where the detail shows their middles. */
const timberNotes = (remark: Remark, { studs, deckTimbers }: SolvedQuarter, { box, ratio }: Window): void => {
  const backing = deckTimbers.findIndex(({ role }) => role === 'backing')
  const note = (timber: Timber | undefined, name: string, angles: readonly number[]): void => {
    if (!timber) return
    const corners = timberCorners(timber)
    const [x, y] = [
      corners.reduce((sum, p) => sum + p.x, 0) / corners.length,
      corners.reduce((sum, p) => sum + p.y, 0) / corners.length,
    ]
    if (x < box.x0 || x > box.x1 || y < box.y0 || y > box.y1) return
    remark(name, calloutWays(scaled({ x, y }, ratio), [name], viewStyle, angles))
  }
  note(studs.at(-1), timberLabel(studs.length - 1, studs.length), [-120, -100, -80, -140, -160, -60])
  note(deckTimbers[backing], timberLabel(studs.length + backing, studs.length), [0, -15, 15, -30, 30, -45])
}

/** The three heights that builders mix up. */
const heightNotes = (
  remark: Remark,
  { transition: { heights, curve, face } }: SolvedQuarter,
  units: Units,
  { box, ratio }: Window,
): void => {
  const level = (at: Point, name: string, mm: number, words: 'left' | 'right'): Drawing =>
    levelMark({ at, figure: `${name} ${showLength(mm, units)}`, words }, viewStyle)
  const lipFace = scaled(face.point(curve.lip), ratio)
  const right = (name: string, mm: number, aways: readonly number[]): Ways =>
    waysAt(aways, (away) => level({ x: box.x1 * ratio + away, y: mm * ratio }, name, mm, 'right'))
  remark(
    'surface height',
    waysAt([14, 20, 28, 36], (away) =>
      level({ x: lipFace.x - away, y: lipFace.y }, 'ridden face, run on', heights.surface, 'left'),
    ),
  )
  remark('deck height', right('deck', heights.deck, [18, 24, 30, 36]))
  if (heights.deck > heights.frame)
    remark('frame height', right('frame', heights.frame, [18, 24, 30, 36, 44]))
}
