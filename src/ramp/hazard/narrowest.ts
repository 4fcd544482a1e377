import type { QuarterDesign, Units } from '../../design/design.ts'
import { type Gap, segmentsGap } from '../../geometry/nearest.ts'
import { pathSegments } from '../../geometry/path.ts'
import { pointBetween } from '../../geometry/point.ts'
import { type Draft, stop, type Trial, warn } from '../check/check.ts'
import { measured, rounded, same } from '../check/offer.ts'
import { leastWood } from '../check/practice.ts'
import { backKey, chamferKey, downKey, firstOf, manyFaults, orWays, upKey } from '../check/remedy.ts'
import { offering, set, type Told, tell, told } from '../check/told.ts'
import type { EdgeName, Side } from '../side/side.ts'

/** The least wood between two edges of a side. */
export interface Narrowest extends Gap {
  readonly edges: readonly [EdgeName, EdgeName]
}

/**
 * Edges that may leave too little wood between them. Others meet in a corner or have air between them; curve and bottom are
 * nearest at the toe, whose height is said, and the wood behind the notch is a check of its own.
 */
const pairs: readonly (readonly [EdgeName, EdgeName])[] = [
  ['curve', 'chamfer'],
  ['notch', 'chamfer'],
  ['top', 'chamfer'],
  ['toe', 'chamfer'],
  ['notch', 'bottom'],
  ['curve', 'back'],
]

/** Null where no two edges lie across wood from each other. */
export const narrowest = ({ edges }: Side): Narrowest | null => {
  const segments = new Map(edges.map(({ name, path }) => [name, pathSegments(path)]))
  const gaps = pairs.flatMap((pair) => {
    const [one, other] = pair.map((name) => segments.get(name) ?? [])
    return one!.flatMap((a) => other!.map((b): Narrowest => ({ edges: pair, ...segmentsGap(a, b) })))
  })
  return gaps.reduce<Narrowest | null>(
    (least, gap) => (least && least.distance <= gap.distance ? least : gap),
    null,
  )
}

/** A side thinner than that is as good as sawn in two: what is thinner is not worth ripping either. mm */
const leastBridge = 10

const edgeWords: Readonly<Record<EdgeName, string>> = {
  bottom: 'the bottom edge',
  chamfer: 'the chamfer',
  back: 'the back edge',
  top: 'the top line',
  notch: 'the notch',
  curve: 'the curve',
  toe: 'the front edge',
}

/** A panel that is cut nearly in two, or to a thin tip, with what gives it more wood. */
export const narrowFindings = (design: QuarterDesign, side: Side, units: Units): readonly Draft[] => {
  const least = narrowest(side)
  if (!least || least.distance >= leastWood - same) return []
  const { from, to, distance, edges } = least
  const middle = pointBetween(from, to, 0.5)
  const show = (mm: number): string => measured(mm, units)
  // so near the floor it would be said to lie on it
  const high = (middle.y < 1 ? measured : rounded)(middle.y, units)
  const message = (trial: Trial): Told =>
    tell(
      `only ${show(distance)} of wood is left between ${edgeWords[edges[0]]} and ${edgeWords[edges[1]]}, `,
      `${rounded(middle.x, units)} behind the toe and ${high} above the floor; ${show(leastWood)} or more is stronger: `,
      orWays(woodWays(trial, design, edges, units), `no one number gives it; ${manyFaults}`),
    )
  return [distance < leastBridge - same ? stop('wood-narrow', message) : warn('wood-narrow', message)]
}

const woodWays = (
  trial: Trial,
  design: QuarterDesign,
  edges: Narrowest['edges'],
  units: Units,
): readonly (Told | null)[] => {
  const first = firstOf(design, units, trial)
  const { chamfer, coping, back } = design
  const smaller = chamfer > 0 ? first(chamferKey, chamfer, -1) : null
  const without = chamfer > 0 && !smaller && trial(chamferKey.typed(design, 0))
  const higher = edges.includes('notch') && coping?.by.kind === 'reveals'
  const up = higher ? first(upKey, (coping.by as { readonly up: number }).up, 1) : null
  const shallower = edges.includes('notch') && coping?.by.kind === 'notch'
  const down = shallower ? first(downKey, (coping.by as { readonly down: number }).down, -1) : null
  const longer = edges.includes('bottom') ? null : first(backKey(design), back.value, 1)
  return [
    smaller && told`a chamfer of ${smaller} or less`,
    without ? offering('no chamfer', set('chamfer', 'none')) : null,
    up && told`\`up\` at least ${up}`,
    down && told`a notch ${down} down or less`,
    longer && (back.from === 'deck' ? told`a deck of ${longer} or more` : told`a side ${longer} long`),
  ]
}
