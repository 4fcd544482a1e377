import { calloutWays } from '../../drafting/callout.ts'
import { alsoDrawn, type Clearance, firstClear, nothingDrawn } from '../../drafting/clearance.ts'
import { dimension } from '../../drafting/dimension/dimension.ts'
import { levelMark } from '../../drafting/level-mark.ts'
import { cross } from '../../drawing/cross.ts'
import { type Drawing, stroke } from '../../drawing/drawing.ts'
import { affineScale } from '../../geometry/affine.ts'
import { circle } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import { showLength, type Units } from '../../length.ts'
import type { SolvedQuarter } from '../../ramp/ramp.ts'
import { cutBoard, cutSkin, cutTimber, type Window, within } from './detail.ts'
import { profileOf } from './profile.ts'
import { scaled, type View, type ViewPart, viewOf, viewStyle } from './view.ts'

const layer = 'note'
const { lines } = viewStyle

/** How far the section reaches around the lip, mm of the ramp. */
const around = { before: 170, behind: 150, below: 130, above: 45 } as const

export const lipWindow = ({ transition: { lip, heights } }: SolvedQuarter, ratio: number): Window => ({
  ratio,
  box: {
    x0: lip.x - around.before,
    x1: lip.x + around.behind,
    y0: heights.frame - around.below,
    y1: heights.deck + around.above,
  },
})

/** The lip cut across between two sides: layers and their ends, pipe, notch behind, board, timbers; reveals and three heights. */
export const lipSection = (ramp: SolvedQuarter, units: Units, ratio: number): View => {
  const window = lipWindow(ramp, ratio)
  const profile = profileOf(ramp, units)
  const { transition, coping, deckBoard: board } = ramp
  const { heights, curve } = transition
  const fine = (mm: number): string => showLength(mm, units, { decimals: 1 })
  const show = (mm: number): string => showLength(mm, units)
  const at = (x: number, y: number): Point => scaled({ x, y }, ratio)
  const face = curve.offset(ramp.skinThickness)
  const timbers = [...ramp.studs, ...ramp.deckTimbers]
  const body: ViewPart[] = [
    {
      name: 'timbers',
      marks: timbers.flatMap((timber) => within(window, cutTimber(timber, ratio))),
    },
    {
      name: 'side',
      marks: within(window, [stroke(layer, pathMap(profile.side, affineScale(ratio)), lines.thin)]),
    },
    { name: 'skin', marks: within(window, cutSkin(ramp, profile.skin, ratio)) },
    ...(board && profile.board
      ? [
          {
            name: 'deck board',
            marks: within(
              window,
              cutBoard(
                profile.board,
                board.sheet,
                heights.frame,
                [board.from, board.from + board.length],
                ratio,
              ),
            ),
          },
        ]
      : []),
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
  let clearance: Clearance = nothingDrawn
  for (const { marks } of body) clearance = alsoDrawn(clearance, marks, 'thing')
  const notes: ViewPart[] = []
  const remark = (name: string, ways: readonly Drawing[]): void => {
    const marks = firstClear(clearance, ways)
    if (!marks) return
    clearance = alsoDrawn(clearance, marks, 'note')
    notes.push({ name, marks })
  }
  const right = window.box.x1 * ratio
  if (coping) {
    const r = coping.outside / 2
    const top = coping.centre.y + r
    const upWays = ['past-to', 'past-from'].flatMap((place) =>
      [right + 6, right + 12, (coping.centre.x + r) * ratio + 10].map((x) =>
        dimension(
          {
            from: at(coping.centre.x, top),
            to: { x: right, y: heights.deck * ratio },
            angle: Math.PI / 2,
            through: { x, y: 0 },
            figure: `up ${fine(coping.up)}`,
            place: place as 'past-to',
          },
          viewStyle,
        ),
      ),
    )
    remark('up', upWays)
    // square to the face, from the face continued to the pipe
    const foot = curve.nearest(coping.centre).place
    const slope = curve.slope(foot)
    const onFace = scaled(face.point(foot), ratio)
    const out = pointToward(onFace, slope + Math.PI / 2, coping.out * ratio)
    remark(
      'out',
      ['past-to', 'past-from'].flatMap((place) =>
        [8, 12, 16, 20].map((far) =>
          dimension(
            {
              from: onFace,
              to: out,
              angle: slope + Math.PI / 2,
              through: pointToward(onFace, slope, r * ratio + far),
              figure: `out ${fine(coping.out)}`,
              place: place as 'past-to',
            },
            viewStyle,
          ),
        ),
      ),
    )
    remark(
      'notch',
      calloutWays(
        at(coping.centre.x + 0.4 * r, coping.centre.y - r),
        [
          `notch, ${coping.seat}: ${fine(coping.along)} along from the lip,`,
          `${fine(coping.down)} down from the side's top line`,
        ],
        viewStyle,
        [-50, -35, -65, -80, -120, -145],
      ),
    )
  }
  const lipFace = scaled(face.point(curve.lip), ratio)
  remark(
    'surface height',
    [14, 20, 28, 36].map((away) =>
      levelMark(
        {
          at: { x: lipFace.x - away, y: lipFace.y },
          figure: `ridden face ${show(heights.surface)}`,
          words: 'left',
        },
        viewStyle,
      ),
    ),
  )
  remark(
    'deck height',
    [18, 24, 30, 36].map((away) =>
      levelMark(
        {
          at: { x: right + away, y: heights.deck * ratio },
          figure: `deck ${show(heights.deck)}`,
          words: 'right',
        },
        viewStyle,
      ),
    ),
  )
  if (heights.deck > heights.frame)
    remark(
      'frame height',
      [18, 24, 30, 36, 44].map((away) =>
        levelMark(
          {
            at: { x: right + away, y: heights.frame * ratio },
            figure: `frame ${show(heights.frame)}`,
            words: 'right',
          },
          viewStyle,
        ),
      ),
    )
  return viewOf([...body, ...notes])
}
