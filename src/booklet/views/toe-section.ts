import { calloutWays } from '../../drafting/callout.ts'
import { alsoDrawn, type Clearance, firstClear, nothingDrawn } from '../../drafting/clearance.ts'
import { hatch } from '../../drafting/hatch/hatch.ts'
import { levelMark } from '../../drafting/level-mark.ts'
import { type Drawing, stroke } from '../../drawing/drawing.ts'
import { affineScale } from '../../geometry/affine.ts'
import { bisect } from '../../geometry/bisect.ts'
import { pathOf, rectangle } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import { showLength, type Units } from '../../length.ts'
import type { SolvedQuarter } from '../../ramp/ramp.ts'
import { cutSkin, cutTimber, type Window, within } from './detail.ts'
import { profileOf } from './profile.ts'
import { scaled, type View, type ViewPart, viewOf, viewStyle } from './view.ts'

const layer = 'note'
const { lines } = viewStyle

/** How far the section reaches around the toe, mm of the ramp. */
const around = { before: 190, behind: 190, above: 130 } as const

export const toeWindow = ({ transition: { toe } }: SolvedQuarter, ratio: number): Window => ({
  ratio,
  box: { x0: -around.before, x1: around.behind, y0: 0, y1: toe.y + around.above },
})

/** The toe cut across between two sides: floor, front edge, layers, first stud, what closes the step. */
export const toeSection = (ramp: SolvedQuarter, units: Units, ratio: number): View => {
  const window = toeWindow(ramp, ratio)
  const profile = profileOf(ramp, units)
  const { transition, design } = ramp
  const { toe, curve } = transition
  const show = (mm: number): string => showLength(mm, units)
  const face = curve.offset(ramp.skinThickness)
  const [left, right] = [window.box.x0 * ratio, window.box.x1 * ratio]
  const body: ViewPart[] = [
    {
      name: 'floor',
      marks: [
        stroke(layer, pathOf({ x: left, y: 0 }, { x: right, y: 0 }), lines.outline),
        ...hatch([rectangle(left, -2, right, 0)], { layer, pen: { width: 0.13 }, spacing: 1.2 }),
      ],
    },
    { name: 'timbers', marks: ramp.studs.flatMap((stud) => within(window, cutTimber(stud, ratio))) },
    {
      name: 'side',
      marks: within(window, [stroke(layer, pathMap(profile.side, affineScale(ratio)), lines.thin)]),
    },
    { name: 'skin', marks: within(window, cutSkin(ramp, profile.skin, ratio)) },
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
  let clearance: Clearance = nothingDrawn
  for (const { marks } of body) clearance = alsoDrawn(clearance, marks, 'thing')
  const notes: ViewPart[] = []
  const remark = (name: string, ways: readonly Drawing[]): void => {
    const marks = firstClear(clearance, ways)
    if (!marks) return
    clearance = alsoDrawn(clearance, marks, 'note')
    notes.push({ name, marks })
  }
  const faceToe = scaled(face.point(curve.toe), ratio)
  remark(
    'step',
    [10, 16, 24, 32].map((away) => {
      const x = faceToe.x - away
      return [
        stroke(layer, pathOf(faceToe, { x, y: faceToe.y }), lines.thin),
        ...levelMark(
          { at: { x, y: faceToe.y }, figure: `ridden face ${show(transition.toeStep)}`, words: 'left' },
          viewStyle,
        ),
      ]
    }),
  )
  const on = scaled({ x: 0, y: toe.y / 2 }, ratio)
  remark(
    'toe',
    calloutWays(on, [`front edge of the side, ${show(toe.y)} high`], viewStyle, [125, 145, 110, 160, 60]),
  )
  const first = ramp.studs[0]
  if (first) {
    const middle = scaled(
      {
        x: first.x + (Math.sin(first.angle) * first.depth) / 2,
        y: first.y - (Math.cos(first.angle) * first.depth) / 2,
      },
      ratio,
    )
    remark(
      'stud',
      calloutWays(
        middle,
        [`stud 1, ${first.lies === 'flat' ? 'flat' : 'on edge'}: its middle ${show(first.at)} up the curve`],
        viewStyle,
        [-12, 5, 75, 60, 45, 100, 120],
      ),
    )
  }
  const { runOut } = design
  if (runOut.kind === 'sheet' && profile.runOut) {
    const x = -0.8 * around.before
    remark(
      'run-out',
      calloutWays(
        { x: x * ratio, y: runOutHeight(ramp, x) * ratio },
        [`run-out, ${showLength(runOut.sheet.thickness, units, { decimals: 1 })} ${runOut.sheet.material}`],
        viewStyle,
        [60, 80, 40],
      ),
    )
  }
  return viewOf([...body, ...notes])
}

/** Height of the ridden face, continued to the floor, at a distance before the toe. */
const runOutHeight = ({ transition: { face, level } }: SolvedQuarter, x: number): number => {
  const before = (place: number): number => face.point(place).x - x
  return before(level.place) >= 0 ? 0 : Math.max(0, face.point(bisect(before, level.place, face.lip)).y)
}
