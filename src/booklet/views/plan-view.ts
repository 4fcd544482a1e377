import { isCurved } from '../../design/kind-traits.ts'
import { groupDimensions, type Measure } from '../../drafting/dimension/group-dimensions.ts'
import { sectionLine } from '../../drafting/section-line.ts'
import { type Drawing, fill, stroke } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { pointsBounds } from '../../geometry/bounds.ts'
import { pathOf, rectangle } from '../../geometry/path.ts'
import { showLength, type Units } from '../../length.ts'
import { wallMiddles } from '../../ramp/frame/bays.ts'
import { timberCorners } from '../../ramp/frame/timber.ts'
import type { SolvedRamp } from '../../ramp/ramp.ts'
import { namesBeside } from './names-beside.ts'
import { type View, type ViewPart, viewOf, viewStyle } from './view.ts'

const layer = 'note'
const { lines } = viewStyle

/** Timbers as they are numbered on the paper: studs from the toe, then those behind the lip. */
export const timbersOf = (ramp: SolvedRamp) => [...ramp.studs, ...ramp.deckTimbers]

/** Where the sections at lip and toe are taken: its letter, its place in the bay, how far it keeps off the dimension's figure and off the side, and how far outside the frame it ends, paper mm. */
export const sectionLetter = 'A'
const section = { place: 0.25, off: 4.5, side: 1.5, end: 1.5 } as const

/** The frame from above without its skin, toe at the left: sides, timbers with their numbers, the pipe's middle line, the section. */
export const planView = (ramp: SolvedRamp, units: Units, ratio: number): View => {
  const { width, length, design } = ramp
  const show = (mm: number): string => showLength(mm, units)
  const thick = design.sides.thickness
  // from the ramp's left face, which lies above
  const walls = wallMiddles(design).map((middle) => width - middle)
  const y = (mm: number): number => mm * ratio
  const sides = walls.map((middle) =>
    rectangle(0, y(middle - thick / 2), length * ratio, y(middle + thick / 2)),
  )
  const bays = walls.slice(1).map((low, i) => [low + thick / 2, walls[i]! - thick / 2] as const)
  const timbers = timbersOf(ramp).map((timber, i) => {
    const { x0, x1, y1 } = pointsBounds(timberCorners(timber))
    return { x0: x0 * ratio, x1: x1 * ratio, top: y1, name: `${i + 1}` }
  })
  const outline = { x0: 0, y0: 0, x1: length * ratio, y1: width * ratio }
  // the lower ones first: others lie over them
  const rising = [...timbers].sort((a, b) => a.top - b.top)
  const timberMarks = rising.flatMap(({ x0, x1 }) =>
    bays.flatMap(([low, high]): Drawing => {
      const path = rectangle(x0, y(low), x1, y(high))
      return [fill(layer, path, 0.88), stroke(layer, path, lines.thin)]
    }),
  )
  const measure = (from: number, to: number, mm: number, side: 'left' | 'right'): Measure => ({
    from: { x: side === 'left' ? 0 : outline.x1, y: y(from) },
    to: { x: side === 'left' ? 0 : outline.x1, y: y(to) },
    figure: show(mm),
    sides: [side],
  })
  const [low, high] = bays[0]!
  const { placed } = groupDimensions(
    [
      { from: { x: 0, y: 0 }, to: { x: outline.x1, y: 0 }, figure: show(length), sides: ['below'] },
      measure(0, width, width, 'right'),
      measure(low, high, ramp.studLength, 'left'),
    ],
    outline,
    viewStyle,
  )
  const pipe = ramp.coping
  // none where the bay is too narrow for a letter beside the figure
  const figureEnd = Math.min(
    ...(
      [
        [(low + high) / 2, ramp.studLength],
        [width / 2, width],
      ] as const
    ).map(([middle, mm]) => y(middle) - textWidth(show(mm), viewStyle.size, 'regular') / 2),
  )
  const wanted = Math.min(y(low + (high - low) * section.place), figureEnd - section.off)
  const cut = isCurved(ramp) && wanted > y(low) + section.side ? wanted : null
  const parts: ViewPart[] = [
    { name: 'timbers', marks: timberMarks },
    {
      name: 'sides',
      marks: sides.flatMap((path): Drawing => [fill(layer, path, 1), stroke(layer, path, lines.outline)]),
    },
    ...(pipe
      ? [
          {
            name: 'pipe',
            marks: [
              stroke(
                layer,
                pathOf({ x: pipe.centre.x * ratio, y: -2 }, { x: pipe.centre.x * ratio, y: outline.y1 + 2 }),
                lines.axis,
              ),
            ],
          },
        ]
      : []),
    ...(cut !== null
      ? [
          {
            name: 'section',
            marks: sectionLine(
              {
                from: { x: -section.end, y: cut },
                to: { x: outline.x1 + section.end, y: cut },
                looks: 1,
                letter: sectionLetter,
              },
              viewStyle,
            ),
          },
        ]
      : []),
    { name: 'dimensions', marks: placed.flatMap((one) => one?.marks ?? []) },
    {
      name: 'numbers',
      marks: namesBeside(
        timbers.map(({ x0, x1, name }) => ({ at: (x0 + x1) / 2, name })),
        outline.y1,
        viewStyle,
      ),
    },
  ]
  return viewOf(parts)
}
