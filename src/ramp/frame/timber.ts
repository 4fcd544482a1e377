import { thinWide } from '../../design/section.ts'
import type { Point } from '../../geometry/point.ts'
import { same } from '../check/offer.ts'

/** A cross timber between the sides, seen from the end: a rectangle in the panel. */
export interface Timber {
  /** middle of its face: towards the skin, or its top */
  readonly x: number
  readonly y: number
  /** slope of that face, radians */
  readonly angle: number
  readonly lies: 'edge' | 'flat'
  /** along the face, and square to it into the panel, mm */
  readonly width: number
  readonly depth: number
}

export const liesWords = ({ lies }: Pick<Timber, 'lies'>): string => (lies === 'edge' ? 'on edge' : 'flat')

/** Thickness and depth that it is ripped to; null where it is used as bought. mm */
export const rippedTo = (
  { lies, width, depth }: Timber,
  section: readonly [number, number],
): readonly [number, number] | null => {
  const own = lies === 'edge' ? ([width, depth] as const) : ([depth, width] as const)
  const [thin, wide] = thinWide(section)
  return own[0] < thin - same || own[1] < wide - same ? own : null
}

/** What it is ripped to, where that is shown as another depth than it is bought in; empty where not. None is ripped but in its depth. */
export const rippedWords = (
  timber: Timber,
  section: readonly [number, number],
  fine: (mm: number) => string,
): string => {
  const [thin, wide] = thinWide(section)
  const depth = fine(timber.depth)
  return rippedTo(timber, section) && depth !== fine(timber.lies === 'edge' ? wide : thin)
    ? `ripped to ${depth}`
    : ''
}

/** `stud 3`, `timber 11`: those behind so many studs are numbered on. */
export const timberLabel = (index: number, studs: number): string =>
  `${index < studs ? 'stud' : 'timber'} ${index + 1}`

/** A point as the timber sees it, mm: along its face from the middle, and square to the face into the panel. */
export const timberOffset = (
  { x, y, angle }: Timber,
  p: Point,
): { readonly along: number; readonly into: number } => {
  const cos = Math.cos(angle)
  const sin = Math.sin(angle)
  const dx = p.x - x
  const dy = p.y - y
  return { along: dx * cos + dy * sin, into: dx * sin - dy * cos }
}

/** From a point to the nearest one of a timber, mm; 0 inside it. */
export const timberDistance = (timber: Timber, p: Point): number => {
  const { along, into } = timberOffset(timber, p)
  return Math.hypot(Math.max(0, Math.abs(along) - timber.width / 2), Math.max(0, -into, into - timber.depth))
}

/** Corners, counter-clockwise from the upper end of the face. */
export const timberCorners = ({ x, y, angle, width, depth }: Timber): readonly Point[] => {
  const cos = Math.cos(angle)
  const sin = Math.sin(angle)
  const alongX = (width / 2) * cos
  const alongY = (width / 2) * sin
  const intoX = depth * sin
  const intoY = depth * cos
  return [
    { x: x + alongX, y: y + alongY },
    { x: x - alongX, y: y - alongY },
    { x: x - alongX + intoX, y: y - alongY - intoY },
    { x: x + alongX + intoX, y: y + alongY - intoY },
  ]
}

/** How far a timber reaches along (dx, dy), from the origin in lengths of that; without a list of its corners. */
export const timberReach = ({ x, y, angle, width, depth }: Timber, dx: number, dy: number): number => {
  const cos = Math.cos(angle)
  const sin = Math.sin(angle)
  return (
    x * dx + y * dy + (width / 2) * Math.abs(cos * dx + sin * dy) + depth * Math.max(0, sin * dx - cos * dy)
  )
}
