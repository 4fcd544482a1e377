import { alsoDrawn, type Clearance, firstClear } from '../../drafting/clearance.ts'
import { type Ways, waysAt } from '../../drafting/ways.ts'
import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { pathOf } from '../../geometry/path.ts'
import { type Point, pointBetween, pointToward } from '../../geometry/point.ts'
import { type Timber, timberCorners, timberDistance } from '../../ramp/frame/timber.ts'
import { scaled, viewStyle } from './view.ts'

const layer = 'note'
const { lines, size } = viewStyle

/** A number stands so much nearer to its own timber than to any other that is seen, mm on paper. */
const nearer = 0.4

/** Numbers of some timbers: each nearer to its own than to any other that is seen, else at the end of a line from it. Indices as timbers are numbered on the paper. */
export const timberNumbers = (
  timbers: readonly Timber[],
  numbered: readonly number[],
  seen: readonly number[],
  ratio: number,
  drawn: Clearance,
): Drawing => {
  let clearance = drawn
  return numbered.flatMap((i): Drawing => {
    const others = seen.filter((other) => other !== i).map((other) => timbers[other]!)
    const marks =
      firstClear(clearance, besideWays(timbers[i]!, others, `${i + 1}`, ratio)) ??
      firstClear(clearance, awayWays(timbers[i]!, others, `${i + 1}`, ratio)) ??
      []
    clearance = alsoDrawn(clearance, marks, 'note')
    return marks
  })
}

const numberMark = ({ x, y }: Point, number: string): Drawing => [
  text(layer, { x, y: y - size / 2 }, size, number, { face: 'bold', align: 'middle' }),
]

const reachOf = (number: string): number => Math.max(0.95 * size, textWidth(number, size, 'bold') / 2 + 1)

/** Places for a timber's number: inside it, behind its inner end, beside it, farther off. */
const besideWays = (timber: Timber, others: readonly Timber[], number: string, ratio: number): Ways => {
  const corners = timberCorners(timber)
  const middle = scaled(pointBetween(corners[0]!, corners[2]!, 0.5), ratio)
  const [half, deep] = [(timber.width * ratio) / 2, (timber.depth * ratio) / 2]
  const into = timber.angle - Math.PI / 2
  const reach = reachOf(number)
  const places = [0, 1, 2].flatMap((more): readonly (readonly [number, number])[] => [
    [0, deep + reach + more],
    [half + reach + more, 0],
    [-half - reach - more, 0],
    [half + reach + more, deep],
    [-half - reach - more, deep],
    [half + reach + more, deep + reach],
    [0, -deep - reach - more],
  ])
  const own = ([along, down]: readonly [number, number]): Point =>
    pointToward(pointToward(middle, timber.angle, along), into, down)
  const isNearest = (p: Point): boolean => {
    const real = scaled(p, 1 / ratio)
    const from = timberDistance(timber, real) + nearer / ratio
    return others.every((other) => timberDistance(other, real) > from)
  }
  return waysAt(([[0, 0], ...places] as const).map(own).filter(isNearest), (p) => numberMark(p, number))
}

/** Its number at the end of a line from its inner end, or from its face, that crosses no other timber; the shorter and straighter ones first. */
const awayWays = (timber: Timber, others: readonly Timber[], number: string, ratio: number): Ways => {
  const corners = timberCorners(timber).map((p) => scaled(p, ratio))
  const into = timber.angle - Math.PI / 2
  const ends = [
    { from: pointBetween(corners[2]!, corners[3]!, 0.5), way: into },
    { from: pointBetween(corners[0]!, corners[1]!, 0.5), way: into + Math.PI },
  ]
  const wide = textWidth(number, size, 'bold') / 2
  /** From where the line ends to the number's middle: below it the room of letters that hang down is kept. */
  const reach = (way: number): number => {
    const high = size * (Math.sin(way) > 0 ? 0.8 : 0.5)
    return Math.min(wide / Math.abs(Math.cos(way)), high / Math.abs(Math.sin(way))) + 0.3
  }
  const places = leads.flatMap(({ long, turn }) =>
    ends.map(({ from, way }) => ({ from, way: way + turn, to: pointToward(from, way + turn, long) })),
  )
  const isOpen = ({ from, to }: { readonly from: Point; readonly to: Point }): boolean =>
    steps.every((t) => {
      const p = scaled(pointBetween(from, to, t), 1 / ratio)
      return others.every((other) => timberDistance(other, p) > 0)
    })
  return waysAt(
    places,
    ({ from, to, way }) => [
      stroke(layer, pathOf(from, to), lines.thin),
      ...numberMark(pointToward(to, way, reach(way)), number),
    ],
    isOpen,
  )
}

/** Such lines, how long on paper and how far they lean: those that lean bar the way to others, so they come later. */
const leads = [1.5, 2.5, 3.5, 4.5, 5.5, 7, 9, 11, 13, 15, 18, 21, 24]
  .flatMap((long) =>
    [0, 0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.4].flatMap((turn) => [
      { long, turn },
      { long, turn: -turn },
    ]),
  )
  .sort((a, b) => a.long + 6 * Math.abs(a.turn) - b.long - 6 * Math.abs(b.turn))
/** Where along such a line other timbers are looked for. */
const steps = Array.from({ length: 41 }, (_, i) => i / 40)
