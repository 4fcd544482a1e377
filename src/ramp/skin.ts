import type { RampDesign, Sheet } from '../design/design.ts'
import { bisect } from '../geometry/bisect.ts'
import { pointAngle, pointDistance, pointToward } from '../geometry/point.ts'
import type { SolvedCoping } from './coping.ts'
import type { Stud } from './studs.ts'
import type { Transition } from './transition.ts'

/** One layer of skin on the curve. */
export interface SkinLayer {
  /** 1 is the one on the studs */
  readonly layer: number
  readonly sheet: Sheet
  /** how far the frame's curve lies under its lower face */
  readonly below: number
  /** place on the curve where it is cut square */
  readonly end: number
  /** flat length to cut: the arc of its middle */
  readonly length: number
  /** stud lines on the flat sheet from its toe end */
  readonly marks: readonly number[]
}

/** Left between the end of the skin and the pipe, mm. */
export const skinGap = 2

export const solveSkin = (
  ramp: RampDesign,
  transition: Transition,
  coping: SolvedCoping | null,
  studs: readonly Stud[],
): readonly SkinLayer[] => {
  const { curve } = transition
  let below = 0
  return ramp.skin.map((sheet, i) => {
    const [lower, upper, middle] = [0, 1, 0.5].map((t) => curve.offset(below + t * sheet.thickness))
    /** room between the square end at a place and the pipe, less the gap */
    const room = (place: number): number => {
      if (!coping) return 1
      const foot = lower!.point(place)
      const away = pointAngle(foot, upper!.point(place))
      const [dx, dy] = [coping.centre.x - foot.x, coping.centre.y - foot.y]
      const along = Math.min(sheet.thickness, Math.max(0, dx * Math.cos(away) + dy * Math.sin(away)))
      return pointDistance(pointToward(foot, away, along), coping.centre) - coping.outside / 2 - skinGap
    }
    const closest = coping ? Math.min(curve.lip, curve.nearest(coping.centre).place) : curve.lip
    const end = room(closest) >= 0 ? curve.lip : bisect(room, curve.toe, closest)
    const length = middle!.lengthTo(end)
    const layer: SkinLayer = {
      layer: i + 1,
      sheet,
      below,
      end,
      length,
      marks: studs
        .map((stud) => middle!.lengthTo(curve.placeAtLength(stud.at)))
        .filter((mark) => mark <= length),
    }
    below += sheet.thickness
    return layer
  })
}
