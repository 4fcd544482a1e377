import { affineApply, isCurved, type SetPlan, type SolvedRamp } from '../../index.ts'
import { kept } from '../kept.ts'
import type { Point } from './word-points.ts'

interface SheetsProps {
  readonly plan: SetPlan
  readonly ramp: SolvedRamp
  readonly ratio: number
  /** where figures stand, mm of the drawing */
  readonly words: readonly Point[]
  readonly showPage: (page: number) => void
}

/** Parts of the way from the left to the right edge of a page, and from its lower to its upper one, where its number may stand. */
const spots = [0.5, 0.25, 0.75, 0.18, 0.82] as const
/** so much farther from the lines, in mm of the drawing, another spot must be than the middle */
const worth = 1
/** what lies farther, mm of the drawing, is far enough */
const far = 5

/** Of the words beside it, mm of the drawing. */
const wordHeight = 2

/** Of a number, mm of the drawing: as large as its page has room for. */
const letters = { least: 2, most: 4.4, ofPage: 0.5 } as const

/** The pages over the side, like sheets on plywood. Twins share a pattern, which bears the first one's name. */
export const Sheets = kept(({ plan, ramp, ratio, words, showPage }: SheetsProps) => {
  const own = plan.pages.filter(
    ({ kind, pattern }) => kind === 'tile' && pattern?.split('/')[0] === ramp.name,
  )
  /** a page that figures cover has no number: it is told by name, and opens all the same */
  const isOver = (number: Point, size: number): boolean =>
    words.some(({ x, y }) => Math.hypot(x - number.x * ratio, y - number.y * ratio) < (size + wordHeight) / 2)
  const busy = [...busyPoints(ramp), ...words.map(({ x, y }) => ({ x: x / ratio, y: y / ratio }))]
  return (
    <g class="sheets">
      {own.map(({ page, tile, toPattern, window }) => {
        const [x0, y0, x1, y1] = window!
        const at = (x: number, y: number): Point =>
          affineApply(toPattern!, { x: x0 + (x1 - x0) * x, y: y0 + (y1 - y0) * y })
        const corners = [at(0, 0), at(1, 0), at(1, 1), at(0, 1)]
        const [across, down] = [corners[1]!, corners[3]!].map(
          ({ x, y }) => Math.hypot(x - corners[0]!.x, y - corners[0]!.y) * ratio,
        ) as [number, number]
        const size = Math.min(letters.most, Math.max(letters.least, Math.min(across, down) * letters.ofPage))
        const number = numberPlace(at, busy, ratio)
        return (
          <g
            key={page}
            data-page={page}
            role="button"
            tabindex={0}
            aria-label={`page ${tile} as it will print`}
            onClick={() => showPage(page)}
            onKeyDown={(event) => {
              if (event.key !== 'Enter' && event.key !== ' ') return
              // the key neither scrolls nor presses what comes
              event.preventDefault()
              showPage(page)
            }}
          >
            <polygon
              points={corners
                .map(({ x, y }) => `${(x * ratio).toFixed(2)},${(-y * ratio).toFixed(2)}`)
                .join(' ')}
            />
            {isOver(number, size) ? null : (
              <text
                x={(number.x * ratio).toFixed(2)}
                y={(-number.y * ratio).toFixed(2)}
                text-anchor="middle"
                dominant-baseline="central"
                font-size={size.toFixed(2)}
              >
                {tile}
              </text>
            )}
          </g>
        )
      })}
    </g>
  )
})

/** Where lines lie: the curve, the top, the pipe with the ring that one takes hold of. */
const busyPoints = (ramp: SolvedRamp): readonly Point[] => {
  if (!isCurved(ramp)) return []
  const { centre, radius, toe, lip } = ramp.transition
  const [from, to] = [toe, lip].map(({ x, y }) => Math.atan2(y - centre.y, x - centre.x)) as [number, number]
  const curve = Array.from({ length: 41 }, (_, i) => {
    const angle = from + ((to - from) * i) / 40
    return { x: centre.x + radius.frame * Math.cos(angle), y: centre.y + radius.frame * Math.sin(angle) }
  })
  const top = Array.from({ length: 11 }, (_, i) => ({
    x: lip.x + ((ramp.length - lip.x) * i) / 10,
    y: lip.y,
  }))
  return [...curve, ...top]
}

/** In the middle of the page, or where no line runs through it. */
const numberPlace = (at: (x: number, y: number) => Point, busy: readonly Point[], ratio: number): Point => {
  const middle = at(0.5, 0.5)
  const corner = at(0, 0)
  const reach = Math.hypot(middle.x - corner.x, middle.y - corner.y) + far / ratio
  const nearby = busy.filter(({ x, y }) => Math.hypot(x - middle.x, y - middle.y) < reach)
  const free = ({ x, y }: Point): number => {
    let least: number = far
    for (const point of nearby) {
      const away = Math.hypot(point.x - x, point.y - y) * ratio
      if (away < least) least = away
    }
    return least
  }
  let [best, most] = [middle, free(middle)]
  const enough = most + worth
  for (const x of spots)
    for (const y of spots) {
      const spot = at(x, y)
      const own = free(spot)
      if (own > most + 0.1) [best, most] = [spot, own]
    }
  return most > enough ? best : middle
}
