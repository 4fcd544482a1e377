import type { Quarter } from './ramp.ts'

/** A notch as it was sawn, mm: from the lip to its back wall, from the top line down to its floor. */
export interface Cut {
  readonly along: number
  readonly down: number
}

/** What its back wall may be measured from: the lip along the top line, where the floor opens to the curve, the back edge. */
export const acrossKeys = ['along', 'floor', 'back'] as const
export type AcrossKey = (typeof acrossKeys)[number]
/** What its floor may be measured from: the top line down, the bottom edge up. */
export const depthKeys = ['down', 'bottom'] as const
export type DepthKey = (typeof depthKeys)[number]

/** null for what is as the design has it; mm */
export interface MeasuredCut {
  readonly across: { readonly key: AcrossKey; readonly mm: number } | null
  readonly depth: { readonly key: DepthKey; readonly mm: number } | null
}

/** As sawn, from what can be measured on a side; null where the floor never meets the curve. */
export const measuredCut = (
  { transition, coping, length }: Quarter,
  { across, depth }: MeasuredCut,
): Cut | null => {
  if (!transition || !coping || length === null) return null
  const { curve, heights, lip } = transition
  const down = depth === null ? coping.down : depth.key === 'down' ? depth.mm : heights.frame - depth.mm
  if (across === null) return { along: coping.along, down }
  if (across.key === 'along') return { along: across.mm, down }
  if (across.key === 'back') return { along: length - across.mm - lip.x, down }
  const place = curve.placeAtHeight(heights.frame - down)
  return place === null ? null : { along: curve.point(place).x + across.mm - lip.x, down }
}

/** What a sawn notch makes of the pipe that lies on its floor and against its wall. mm */
export interface AsCut extends Cut {
  readonly up: number
  readonly out: number
  /** the reveals of the design */
  readonly wanted: { readonly up: number; readonly out: number }
  /** under the pipe and behind it, that brings it to these; negative: so much more is to be taken off there */
  readonly shims: { readonly under: number; readonly behind: number }
}

/** null where the ramp has no pipe, or none that could be solved. */
export const solveAsCut = (
  { transition, coping, skinThickness }: Quarter,
  { along, down }: Cut,
): AsCut | null => {
  if (!transition || !coping) return null
  const { curve, heights, lip } = transition
  const r = coping.outside / 2
  const centre = { x: lip.x + along - r, y: heights.frame - down + r }
  return {
    along,
    down,
    up: centre.y + r - heights.deck,
    out: r - curve.offset(skinThickness).nearest(centre).distance,
    wanted: { up: coping.up, out: coping.out },
    // wall and floor hold the pipe, so a shim moves it by its own thickness
    shims: { under: coping.centre.y - centre.y, behind: centre.x - coping.centre.x },
  }
}
