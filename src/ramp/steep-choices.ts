import type { QuarterDesign } from '../design/design.ts'
import { skinThickness } from './side/skin-thickness.ts'
import { lipOfRatio, type Steepness, steepnesses } from './steepness.ts'

/** Where a word for the lip begins: the least radius at this height, the most height at this radius. In the layers of the design, mm. */
export interface SteepChoice {
  readonly word: Steepness
  readonly radius: number
  readonly height: number
}

/**
 * The curve of the design with its radius or its height moved to where each word begins. With a the lip's angle, R and h of the
 * frame, s the skin, t the tangent's height: R cos a = c − h, where c = R − s + t (surface) or R + t (frame).
 */
export const steepChoices = (design: QuarterDesign): readonly SteepChoice[] => {
  const { circle, tangent } = design.transition
  const s = skinThickness(design)
  const board = design.deckBoard?.thickness ?? 0
  const lost = tangent.layer === 'surface' ? s - tangent.height : -tangent.height
  const frameRadius = circle.layer === 'frame' ? circle.radius : circle.radius + s
  const { layer, value } = design.height
  return steepnesses.map(({ word, least }) => {
    const cos = Math.cos(lipOfRatio(least))
    const over = layer === 'deck' ? board : layer === 'surface' ? s * cos : 0
    const radius = (value - over + lost) / (1 - cos)
    return {
      word,
      radius: circle.layer === 'frame' ? radius : radius - s,
      height: frameRadius * (1 - cos) - lost + over,
    }
  })
}
