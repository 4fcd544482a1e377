import type { Quarter } from './ramp.ts'

/** A notch as it was sawn, mm: from the lip to its back wall, from the top line down to its floor. */
export interface Cut {
  readonly along: number
  readonly down: number
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
