import { isCurved, type SolvedRamp, type ViewPart } from '../../index.ts'
import type { Alarm } from '../state/use-pointing.ts'
import type { PlaceName } from '../words/check-places.ts'
import type { Point } from './word-points.ts'

/** Whether a part of the drawing is what is pointed at. */
export const pointsAt = (place: PlaceName, { name }: ViewPart): boolean => {
  switch (place) {
    case 'studs':
      return name.startsWith('stud ')
    case 'timbers':
      return name.startsWith('timber ')
    case 'skin':
      return name.startsWith('layer ')
    case 'toe':
    case 'curve':
    case 'lip':
    case 'back':
      return false
    case 'side':
    case 'deck board':
    case 'run-out':
    case 'pipe':
      return name === place
    default:
      return place satisfies never
  }
}

interface PointMarkProps {
  readonly place: PlaceName
  readonly ramp: SolvedRamp
  readonly ratio: number
}

/** A ring about a point of the side. */
export const PointMark = ({ place, ramp, ratio }: PointMarkProps) => {
  const at = pointOf(place, ramp)
  return at === null ? null : <circle class="ring" cx={at.x * ratio} cy={-at.y * ratio} r="5" />
}

interface AlarmMarkProps {
  readonly alarm: Alarm
  readonly ramp: SolvedRamp
  readonly ratio: number
}

/** Of the words of a sign, mm of the drawing: how high, how far from it, and of each letter how wide at most. */
const alarmText = { size: 3.4, off: 3.6, letter: 2.3 } as const

/** How far the words of a sign reach to the left, mm of the drawing. */
export const alarmLeft = (alarm: Alarm, ramp: SolvedRamp, ratio: number): number => {
  const at = pointOf(alarm.place, ramp)
  return at === null ? 0 : at.x * ratio - alarmText.off - alarm.words.length * alarmText.letter
}

/** Points of a sign and its words, mm of the drawing: page numbers keep off them. */
export const alarmPoints = (alarm: Alarm, ramp: SolvedRamp, ratio: number): readonly Point[] => {
  const at = pointOf(alarm.place, ramp)
  if (at === null) return []
  const left = alarmLeft(alarm, ramp, ratio)
  const right = at.x * ratio
  const count = Math.ceil((right - left) / 2)
  return Array.from({ length: count + 1 }, (_, i) => ({
    x: left + ((right - left) * i) / count,
    y: at.y * ratio - 2.6,
  }))
}

/** A sign that stays, and its words. */
export const AlarmMark = ({ alarm, ramp, ratio }: AlarmMarkProps) => {
  const at = pointOf(alarm.place, ramp)
  if (at === null) return null
  const [x, y] = [at.x * ratio, -at.y * ratio]
  return (
    <g class="alarm-mark">
      <path d={`M${x} ${y + 0.6}l2.6 4.4h-5.2z`} />
      <text x={x - alarmText.off} y={y + 3.8} text-anchor="end" font-size={alarmText.size}>
        {alarm.words}
      </text>
    </g>
  )
}

const pointOf = (place: PlaceName, ramp: SolvedRamp): { readonly x: number; readonly y: number } | null => {
  const quarter = isCurved(ramp)
  switch (place) {
    case 'toe':
      return quarter ? ramp.transition.toe : { x: 0, y: ramp.heights.surface }
    case 'curve': {
      if (!quarter) return null
      // half way up the arc
      const { centre, lip, lipAngle } = ramp.transition
      const radius = Math.hypot(lip.x - centre.x, lip.y - centre.y)
      return {
        x: centre.x + radius * Math.sin(lipAngle / 2),
        y: centre.y - radius * Math.cos(lipAngle / 2),
      }
    }
    case 'lip':
      return quarter ? ramp.transition.lip : null
    case 'back':
      // a cut corner takes the foot away: it ends before the back
      return { x: ramp.length - (quarter ? ramp.design.chamfer : 0), y: 0 }
    case 'pipe':
      return quarter && ramp.coping ? ramp.coping.centre : null
    default:
      return null
  }
}
