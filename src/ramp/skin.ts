import type { RampDesign, Sheet } from '../design/design.ts'
import { bisect } from '../geometry/bisect.ts'
import { pointAngle, pointDistance, pointToward } from '../geometry/point.ts'
import { type Finding, warn } from './check.ts'
import type { SolvedCoping } from './coping.ts'
import { same } from './offer.ts'
import type { Stud } from './studs.ts'
import type { Transition } from './transition.ts'

/** One layer of skin on the curve. */
export interface SkinLayer {
  /** 1 is the one on the studs */
  readonly layer: number
  readonly sheet: Sheet
  /** how far the frame's curve lies under its lower face */
  readonly below: number
  /** place on the curve where it is cut square; the toe where the pipe leaves it no room */
  readonly end: number
  /** flat length to cut: the arc of its middle */
  readonly length: number
  /** stud lines on the flat sheet from its toe end */
  readonly marks: readonly number[]
}

/** Left between the end of the skin and the pipe, mm. */
export const skinGap = 2

/** Layers that the pipe leaves no room for. */
export const skinFindings = (skin: readonly SkinLayer[]): readonly Finding[] => {
  const lost = skin.filter((layer) => layer.length <= same).map(({ layer }) => layer)
  if (lost.length === 0) return []
  return [
    warn(
      'skin-none',
      `the pipe reaches down to the toe and leaves no room for skin (layer ${lost.join(', ')}); take a thinner pipe or a higher ramp`,
    ),
  ]
}

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
    const free = room(closest) >= 0
    const blocked = closest <= curve.toe || room(curve.toe) <= 0
    const end = free ? curve.lip : blocked ? curve.toe : bisect(room, curve.toe, closest)
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
