import type { Units } from '../design/design.ts'
import { cross } from '../drawing/cross.ts'
import { type Drawing, stroke, text } from '../drawing/drawing.ts'
import { circle } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { showLength } from '../length.ts'
import type { SolvedCoping } from '../ramp/side/coping.ts'
import { notchCorner, notchDrill } from '../ramp/side/side.ts'
import { letters, pens } from './pens.ts'

/** Where to drill so that a saw can turn in the inner corner of a square notch: the hole touches floor and wall. */
export interface ReliefHole {
  readonly corner: Point
  readonly marks: Drawing
  readonly words: string
}

/** What a round seat is sawn to, beside it on the wood; null for a square one. */
export const roundWords = (coping: SolvedCoping | null, units: Units): Drawing[number] | null => {
  if (coping?.seat !== 'round') return null
  const fine = (mm: number): string => showLength(mm, units, { decimals: 1, unit: true })
  const { centre, outside } = coping
  return text(
    'mark',
    { x: centre.x + outside / 2 + 3, y: centre.y - letters.small },
    letters.small,
    `round notch: radius ${fine(outside / 2)}`,
  )
}

/** Null for a round seat. */
export const reliefHole = (coping: SolvedCoping | null, units: Units): ReliefHole | null => {
  if (coping?.seat !== 'square') return null
  const drill = notchDrill[units]
  const corner = notchCorner(coping)
  const centre = { x: corner.x - drill / 2, y: corner.y + drill / 2 }
  return {
    corner,
    marks: [stroke('mark', circle(centre, drill / 2), pens.mark), ...cross('mark', centre, 3, pens.mark)],
    words: `drill ${showLength(drill, units, { unit: true })} first`,
  }
}
