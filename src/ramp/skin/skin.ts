import type { QuarterDesign, RampDesign, Sheet, Units } from '../../design/design.ts'
import { bisect } from '../../geometry/bisect.ts'
import { pointAngle, pointDistance, pointToward } from '../../geometry/point.ts'
import { type Draft, stop, type Trial, warn } from '../check/check.ts'
import { measured, same } from '../check/offer.ts'
import { firstThat, orWays, stepBackKey } from '../check/remedy.ts'
import { tell, told } from '../check/told.ts'
import type { Curve } from '../curve/curve.ts'
import type { Stud } from '../frame/stud.ts'
import type { SolvedCoping } from '../side/coping.ts'

/** One layer of skin on the curve. */
export interface SkinLayer {
  /** 1 is the one on the studs */
  readonly layer: number
  readonly sheet: Sheet
  /** how far the frame's curve lies under its lower face */
  readonly below: number
  /** place on the curve of its toe end */
  readonly start: number
  /** place on the curve where it is cut square; the toe where the pipe leaves it no room */
  readonly end: number
  /** flat length to cut: the arc of its middle */
  readonly length: number
  /** stud lines on the flat sheet from its toe end */
  readonly marks: readonly number[]
}

/** How far each layer starts behind the one below. mm */
export const stepBack = ({ runOut }: RampDesign): number => (runOut?.kind === 'stepped' ? runOut.back : 0)

/** Left between the end of the skin and the pipe, mm. */
export const skinGap = 2
/** The same in words: not every page explains the signs of inches. */
export const skinGapWords = '2 mm (a shade under 1/8 in)'

/** Layers that the pipe leaves no room for, or that step back over the middle of the first stud. */
export const skinFindings = (
  design: QuarterDesign,
  skin: readonly SkinLayer[],
  units: Units,
): readonly Draft[] => {
  const { runOut } = design
  const findings: Draft[] = []
  const lost = skin.filter((layer) => layer.length <= same).map(({ layer }) => layer)
  if (lost.length > 0)
    findings.push(
      warn(
        'skin-none',
        `the pipe reaches down to the toe and leaves no room for skin (layer ${lost.join(', ')}); take a thinner pipe or a higher ramp`,
      ),
    )
  const last = skin.at(-1)
  // the first stud's line on it, negative before its toe end
  const mark = last?.marks[0] ?? 0
  if (runOut?.kind === 'stepped' && last && mark < -same) {
    const most = runOut.back + mark / (skin.length - 1)
    findings.push(
      stop('step-back', (trial: Trial) => {
        const less = firstThat(trial, design, stepBackKey, most, -1, units)
        return tell(
          `layer ${last.layer} starts ${measured(-mark, units)} behind the middle of the first stud, with too little wood under its end; `,
          orWays(
            [less && told`\`step-back\` may be at most ${less}`],
            'take fewer layers, or a run-out sheet',
          ),
        )
      }),
    )
  }
  return findings
}

export const solveSkin = (
  ramp: RampDesign,
  curve: Curve,
  coping: SolvedCoping | null,
  studs: readonly Stud[],
): readonly SkinLayer[] => {
  let below = 0
  const back = stepBack(ramp)
  return ramp.skin.map((sheet, i) => {
    const [lower, upper, middle] = [0, 1, 0.5].map((t) => curve.offset(below + t * sheet.thickness))
    /** room between the square end at a place and the pipe, less the gap */
    const room = (place: number): number => {
      if (!coping) return 1
      const foot = lower!.point(place)
      const away = pointAngle(foot, upper!.point(place))
      const dx = coping.centre.x - foot.x
      const dy = coping.centre.y - foot.y
      const along = Math.min(sheet.thickness, Math.max(0, dx * Math.cos(away) + dy * Math.sin(away)))
      return pointDistance(pointToward(foot, away, along), coping.centre) - coping.outside / 2 - skinGap
    }
    const closest = coping ? Math.min(curve.lip, curve.nearest(coping.centre).place) : curve.lip
    const free = room(closest) >= 0
    const blocked = closest <= curve.toe || room(curve.toe) <= 0
    const end = free ? curve.lip : blocked ? curve.toe : bisect(room, curve.toe, closest)
    const start = i * back === 0 ? curve.toe : middle!.placeAtLength(i * back)
    const ahead = middle!.lengthTo(start)
    const length = Math.max(0, middle!.lengthTo(end) - ahead)
    const layer: SkinLayer = {
      layer: i + 1,
      sheet,
      below,
      start,
      end,
      length,
      marks: studs
        .map((stud) => middle!.lengthTo(curve.placeAtLength(stud.at)) - ahead)
        .filter((mark) => mark <= length),
    }
    below += sheet.thickness
    return layer
  })
}
