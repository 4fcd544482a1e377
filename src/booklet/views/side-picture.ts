import type { Design } from '../../design/design.ts'
import { firstScale } from '../../drafting/scale.ts'
import { scaleBar } from '../../drafting/scale-bar.ts'
import { type Drawing, group, text } from '../../drawing/drawing.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import type { SolvedDesign } from '../../ramp/ramp.ts'
import { solvedRamp } from './profile.ts'
import { sideView } from './side-view.ts'
import { matesSize } from './size-mates.ts'
import { type View, viewMarks, viewStyle } from './view.ts'

/** A picture of so many mm; what is drawn lies between 0,0 and width, height. */
export interface Picture {
  readonly drawing: Drawing
  readonly width: number
  readonly height: number
}

/** Room that the views of a picture may take, mm. */
export interface PictureRoom {
  readonly width: number
  readonly height: number
}

const margin = 4
const between = 8
const nameSize = 3.5
const barWidth = 60
const barHeight = 8

/** All ramps from the side, one under the other, to one scale; null where none is solved. */
export const sidePicture = (design: Design, { ramps }: SolvedDesign, room: PictureRoom): Picture | null => {
  const { units } = design
  const solved = ramps.flatMap((ramp, index) => {
    const whole = solvedRamp(ramp)
    return whole ? [{ ramp: whole, index }] : []
  })
  if (solved.length === 0) return null
  const named = ramps.length > 1
  // beside the shortest, which leaves most room
  const smallest = solved.reduce(
    (least, { ramp }, i) => (ramp.length < solved[least]!.ramp.length ? i : least),
    0,
  )
  const views = (ratio: number): readonly View[] =>
    solved.map(({ ramp, index }, i) => sideView({ ramp, units, ratio, index, mates: i === smallest }))
  const tall = (view: View): number => view.box.y1 - view.box.y0 + (named ? nameSize + 3 : 0)
  const sizeOf = (all: readonly View[]): PictureRoom => ({
    width: Math.max(...all.map(({ box }) => box.x1 - box.x0)) + 2 * margin,
    height: all.reduce((sum, view) => sum + tall(view) + between, 0) + barHeight + 2 * margin,
  })
  const longest = Math.max(...solved.map(({ ramp }) => ramp.length))
  const scale = firstScale(units, ({ ratio }) => {
    // asked first, since most scales are too large
    if (longest * ratio > room.width || matesSize.height * ratio > room.height) return false
    const size = sizeOf(views(ratio))
    return size.width <= room.width && size.height <= room.height
  })
  const all = views(scale.ratio)
  const { width, height } = sizeOf(all)
  let top = height - margin
  const drawing = all.flatMap((view, i): Drawing => {
    const own = top
    top -= tall(view) + between
    const name = solved[i]!.ramp.name
    return [
      ...(named ? [text('note', { x: margin, y: own - nameSize }, nameSize, name, { face: 'bold' })] : []),
      group(
        affineTranslate(margin - view.box.x0, own - (named ? nameSize + 3 : 0) - view.box.y1),
        viewMarks(view),
      ),
    ]
  })
  const bar = scaleBar({ x: margin + 2, y: margin + 1 }, scale, units, barWidth, viewStyle)
  return { drawing: [...drawing, ...bar.marks], width: Math.max(width, bar.box.x1 + margin), height }
}
