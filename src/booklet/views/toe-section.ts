import { calloutWays } from '../../drafting/callout.ts'
import { hatch } from '../../drafting/hatch/hatch.ts'
import { levelMark } from '../../drafting/level-mark.ts'
import { waysAt } from '../../drafting/ways.ts'
import { stroke } from '../../drawing/drawing.ts'
import { affineScale } from '../../geometry/affine.ts'
import { bisect } from '../../geometry/bisect.ts'
import { pathOf, rectangle } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import { pointToward } from '../../geometry/point.ts'
import { showLength, type Units } from '../../length.ts'
import { sheetWords } from '../../ramp/check/sheet-words.ts'
import { liesWords } from '../../ramp/frame/timber.ts'
import type { SolvedQuarter } from '../../ramp/ramp.ts'
import { annotated, cutFrame, type Remark, type Window, within } from './detail.ts'
import { type Profile, rampProfile } from './profile.ts'
import { scaled, type View, type ViewPart, viewStyle } from './view.ts'

const layer = 'note'
const { lines } = viewStyle

/** How far the section reaches around the toe, mm of the ramp. */
const around = { before: 190, behind: 190, above: 130 } as const

const toeWindow = ({ transition: { toe } }: SolvedQuarter, ratio: number): Window => ({
  ratio,
  box: { x0: -around.before, x1: around.behind, y0: 0, y1: toe.y + around.above },
})

/** The toe cut across between two sides: floor, front edge, layers, first stud, what closes the step. */
export const toeSection = (ramp: SolvedQuarter, units: Units, ratio: number): View => {
  const window = toeWindow(ramp, ratio)
  const profile = rampProfile(ramp, units)
  return annotated(toeBody(ramp, profile, window), (remark) => {
    edgeNotes(remark, ramp, units, ratio)
    if (profile.runOut) runOutNote(remark, ramp, units, ratio)
  })
}

const toeBody = (ramp: SolvedQuarter, profile: Profile, window: Window): readonly ViewPart[] => {
  const { box, ratio } = window
  const [left, right] = [box.x0 * ratio, box.x1 * ratio]
  return [
    {
      name: 'floor',
      marks: [
        stroke(layer, pathOf({ x: left, y: 0 }, { x: right, y: 0 }), lines.outline),
        ...hatch([rectangle(left, -2, right, 0)], { layer, pen: { width: 0.13 }, spacing: 1.2 }),
      ],
    },
    ...cutFrame(window, ramp, profile, ramp.studs),
    ...(profile.runOut
      ? [
          {
            name: 'run-out',
            marks: within(window, [
              stroke(layer, pathMap(profile.runOut, affineScale(ratio)), lines.outline),
            ]),
          },
        ]
      : []),
  ]
}

/** Height of the ridden face at the toe, the front edge, the first stud. */
const edgeNotes = (remark: Remark, ramp: SolvedQuarter, units: Units, ratio: number): void => {
  const { toe, curve, face, toeStep } = ramp.transition
  const show = (mm: number): string => showLength(mm, units)
  const faceToe = scaled(face.point(curve.toe), ratio)
  remark(
    'step',
    waysAt([10, 16, 24, 32], (away) => {
      const x = faceToe.x - away
      return [
        stroke(layer, pathOf(faceToe, { x, y: faceToe.y }), lines.thin),
        ...levelMark(
          { at: { x, y: faceToe.y }, figure: `ridden face ${show(toeStep)}`, words: 'left' },
          viewStyle,
        ),
      ]
    }),
  )
  const on = scaled({ x: 0, y: toe.y / 2 }, ratio)
  remark(
    'toe',
    calloutWays(
      on,
      [`front edge of the side, ${show(toe.y)} high`],
      viewStyle,
      [-50, -65, -35, -120, -140, 125, 145],
    ),
  )
  const [first] = ramp.studs
  if (!first) return
  const middle = pointToward(first, first.angle - Math.PI / 2, first.depth / 2)
  remark(
    'stud',
    calloutWays(
      scaled(middle, ratio),
      [`stud 1, ${liesWords(first)}: its middle ${show(first.at)} up the curve`],
      viewStyle,
      [-12, 5, 75, 60, 45, 100, 120],
    ),
  )
}

const runOutNote = (remark: Remark, ramp: SolvedQuarter, units: Units, ratio: number): void => {
  const { runOut } = ramp.design
  if (runOut.kind !== 'sheet') return
  const x = -0.8 * around.before
  remark(
    'run-out',
    calloutWays(
      scaled({ x, y: runOutHeight(ramp, x) }, ratio),
      [`run-out, ${sheetWords(runOut.sheet, units)}`],
      viewStyle,
      [60, 80, 40],
    ),
  )
}

/** Height of the ridden face, continued to the floor, at a distance before the toe. */
const runOutHeight = ({ transition: { face, level } }: SolvedQuarter, x: number): number => {
  const before = (place: number): number => face.point(place).x - x
  return before(level.place) >= 0 ? 0 : Math.max(0, face.point(bisect(before, level.place, face.lip)).y)
}
