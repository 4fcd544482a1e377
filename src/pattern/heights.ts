import type { LevelMark } from '../drafting/level-mark.ts'
import { type DraftStyle, lineTypes } from '../drafting/line-types.ts'
import { showLength, type Units } from '../length.ts'
import type { SolvedQuarter } from '../ramp/ramp.ts'
import { notchCorner } from '../ramp/side/side.ts'
import { letters, pens } from './pens.ts'

/** A height at its own level, and from where to where along it its tip may stand, mm of the pattern. */
export interface PatternLevel extends LevelMark {
  readonly from: number
  readonly to: number
}

export const levelStyle: DraftStyle = {
  layer: 'datum',
  size: letters.small,
  lines: lineTypes(pens.mark.width),
}

/** How far from its usual place a height may stand, mm: on a page beside it another says the same of the map. */
const reach = 160

/** The three heights that builders mix up: those of frame and deck behind the notch, that of the ridden face before the lip. */
export const heightLevels = (
  { side, transition, coping, skinThickness }: SolvedQuarter,
  units: Units,
): readonly PatternLevel[] => {
  const { frame, deck, surface } = transition.heights
  const show = (mm: number): string => showLength(mm, units)
  const wall = coping ? notchCorner(coping).x : transition.lip.x
  const start = Math.min(wall + 20, side.length - 4)
  const face = { x: transition.lip.x - skinThickness * Math.sin(transition.lipAngle), y: surface }
  const behind = (x: number, y: number, figure: string): PatternLevel => ({
    at: { x, y },
    figure,
    words: 'right',
    from: Math.min(wall + 6, x),
    to: Math.max(x, Math.min(x + reach, side.length - 4)),
  })
  return [
    ...(deck > frame ? [behind(start, deck, `deck ${show(deck)}`)] : []),
    // the waste side of the top line carries its band
    { ...behind(start, frame, `frame ${show(frame)}`), hangs: true },
    {
      at: { x: face.x - 6, y: surface },
      figure: `ridden face ${show(surface)}`,
      words: 'left',
      from: face.x - 6 - reach,
      to: face.x - 6,
    },
  ]
}
