import type { Stock, Units } from '../../../src/design/design.ts'
import { runOutSheet } from '../../../src/ramp/beside/run-out-sheet.ts'
import type { Flat, Quarter } from '../../../src/ramp/ramp.ts'
import { rampScrews } from '../../../src/stock/screws.ts'
import { timberPartsOf } from '../../../src/stock/timber-parts.ts'

type Place = readonly [number, number, number]

/** A screw or a bolt of a ramp: from its head to its point behind the toe, up, and from the left outer face. mm */
export interface Axis {
  readonly of: string
  readonly into: 'end' | 'face'
  /** number of the wall that it goes through; null where it goes through none */
  readonly wall: number | null
  readonly from: Place
  readonly to: Place
  readonly thick: number
}

/** As sold, mm; by gauge (ASME B18.6.1, from memory): No. 8 is 0.164 in, No. 10 is 0.190 in. */
const thickness = { mm: { sheet: 4.5, frame: 5 }, in: { sheet: 0.164 * 25.4, frame: 0.19 * 25.4 } } as const

const across = (
  list: readonly number[],
  of: string,
  [fx, fy]: readonly [number, number],
  [tx, ty]: readonly [number, number],
  thick: number,
): readonly Axis[] =>
  list.map((z) => ({ of, into: 'face', wall: null, from: [fx, fy, z], to: [tx, ty, z], thick }))

/** Square to the skin at a place of a flat sheet whose middle keeps its length when it is bent; its head so far over the frame. */
const squareTo = (
  ramp: Quarter | Flat,
  at: number,
  middle: number,
  over: number,
): readonly [readonly [number, number], readonly [number, number]] => {
  if (ramp.kind === 'flat')
    return [
      [at, ramp.heights.frame + over],
      [0, -1],
    ]
  const { centre, radius, toeAngle } = ramp.transition!
  const angle = toeAngle + at / (radius.frame - middle)
  const out: readonly [number, number] = [Math.sin(angle), -Math.cos(angle)]
  const r = radius.frame - over
  return [[centre.x + r * out[0], centre.y + r * out[1]], out]
}

/** Every screw of a ramp whose place the design tells, worked out of circle, sheets and timbers. */
export const everyScrew = (ramp: Quarter | Flat, stock: Stock, units: Units): readonly Axis[] => {
  const { design } = ramp
  const { sheet: thin, frame: thick } = thickness[units]
  const driven = (
    of: string,
    [head, way]: ReturnType<typeof squareTo>,
    length: number | null,
    list: readonly number[],
  ): readonly Axis[] =>
    length === null
      ? []
      : across(list, of, head, [head[0] + length * way[0], head[1] + length * way[1]], thin)
  const back = design.runOut?.kind === 'stepped' ? design.runOut.back : 0
  let below = 0
  const skin = ramp.skin.flatMap((layer, i) => {
    const [middle, over] = [below + layer.sheet.thickness / 2, below + layer.sheet.thickness]
    below = over
    return layer.rows.flatMap((row) =>
      driven(
        `layer ${layer.layer} ${row.at.toFixed(1)}`,
        squareTo(ramp, row.at + i * back, middle, over),
        row.length,
        row.across,
      ),
    )
  })
  return [
    ...skin,
    ...onTop(ramp, driven),
    ...lapped(ramp, stock, units, driven),
    ...ends(ramp, stock, units, thick),
  ]
}

type Drive = (
  of: string,
  at: ReturnType<typeof squareTo>,
  length: number | null,
  list: readonly number[],
) => readonly Axis[]

/** Through deck board and pipe, straight down. */
const onTop = (ramp: Quarter | Flat, driven: Drive): readonly Axis[] => {
  if (ramp.kind === 'flat') return []
  const { deckBoard: board, coping, pipe, transition } = ramp
  const deck = (board?.rows ?? []).flatMap(({ at, across: list, length }) =>
    driven(
      `deck board ${at.toFixed(1)}`,
      [
        [board!.from + at, transition!.heights.frame + board!.sheet.thickness],
        [0, -1],
      ],
      length,
      list,
    ),
  )
  if (!coping || !pipe) return deck
  // through a wall of 4 and 40 (1 1/2 in) into the timber: 50 and 2 in are the next that are sold
  const long = ramp.design.coping && thicknessOfPipe(ramp)
  return [
    ...deck,
    ...driven(
      'pipe',
      [
        [coping.centre.x, coping.centre.y - coping.outside / 2 + 4],
        [0, -1],
      ],
      long,
      pipe.holes,
    ),
  ]
}

const thicknessOfPipe = (_: Quarter): number => 50

const lapped = (ramp: Quarter | Flat, stock: Stock, units: Units, driven: Drive): readonly Axis[] => {
  if (ramp.kind === 'flat' || !ramp.transition) return []
  const sheet = runOutSheet(ramp, stock, units)
  if (!sheet?.row) return []
  const { radius, toeAngle } = ramp.transition
  const face = radius.frame - ramp.skinThickness
  const up = (units === 'mm' ? 50 : 50.8) - sheet.row.at
  // along the ridden face, so by its angle
  const at = (up / face) * radius.frame
  return driven(
    'run-out',
    squareTo(
      { ...ramp, transition: { ...ramp.transition, toeAngle } },
      at,
      0,
      ramp.skinThickness + sheet.sheet.thickness,
    ),
    sheet.row.length,
    sheet.row.across,
  )
}

/** Through both sides, and through ribs to either side. */
const ends = (ramp: Quarter | Flat, stock: Stock, units: Units, thick: number): readonly Axis[] => {
  const { count, thickness: wall } = ramp.design.sides
  const lines = rampScrews(ramp, timberPartsOf([ramp]), { units, stock }).filter(({ use }) => use === 'frame')
  const [usual, plated] = lines.map(({ length }) => length!)
  const pitch = (ramp.width - wall) / (count - 1)
  return ramp.endScrews.flatMap(({ pair }, i) => {
    const on = ramp.splices.some(({ timber }) => timber === i)
    const long = on ? (plated ?? usual!) : usual!
    return pair.flatMap(({ at: { x, y } }) =>
      Array.from({ length: count }, (_, k) => k).flatMap((k): readonly Axis[] => {
        const [left, right] = [k * pitch, k * pitch + wall]
        const to = (from: number, point: number): Axis => ({
          of: `end of ${i + 1}`,
          into: 'end',
          wall: k,
          from: [x, y, from],
          to: [x, y, point],
          thick,
        })
        return [
          ...(k < count - 1 ? [to(left, left + long)] : []),
          ...(k > 0 ? [to(right, right - long)] : []),
        ]
      }),
    )
  })
}

/** Between two axes: the least over one of the least over the other, each by thirds of what is left. A distance is convex in both. */
export const axesBetween = (a: Axis, b: Axis): number => {
  // from a point of the one to a point of the other, by shares of their lengths
  const [x, y, z] = [b.from[0] - a.from[0], b.from[1] - a.from[1], b.from[2] - a.from[2]]
  const [ax, ay, az] = [a.to[0] - a.from[0], a.to[1] - a.from[1], a.to[2] - a.from[2]]
  const [bx, by, bz] = [b.to[0] - b.from[0], b.to[1] - b.from[1], b.to[2] - b.from[2]]
  const apart = (s: number, t: number): number => {
    const dx = x + t * bx - s * ax
    const dy = y + t * by - s * ay
    const dz = z + t * bz - s * az
    return Math.sqrt(dx * dx + dy * dy + dz * dz)
  }
  const least = (of: (t: number) => number): number => {
    let low = 0
    let high = 1
    while (high - low > 1e-6) {
      const p = low + (high - low) / 3
      const q = high - (high - low) / 3
      if (of(p) < of(q)) high = q
      else low = p
    }
    return Math.min(of(0), of(1), of((low + high) / 2))
  }
  return least((s) => least((t) => apart(s, t)))
}

export interface Meeting {
  readonly a: Axis
  readonly b: Axis
  /** wood between them, mm */
  readonly wood: number
}

/** Pairs of screws with less wood between them than told: `ends` where one goes into the end of a timber. */
export const meetings = (
  all: readonly Axis[],
  { ends: between, others }: { readonly ends: number; readonly others: number },
): { readonly looked: number; readonly found: readonly Meeting[] } => {
  const found: Meeting[] = []
  let looked = 0
  // boxes, three lowest and three highest numbers each: every pair is asked
  const boxes = new Float64Array(6 * all.length)
  all.forEach(({ from, to }, i) => {
    for (let k = 0; k < 3; k++) {
      boxes[6 * i + k] = Math.min(from[k]!, to[k]!)
      boxes[6 * i + 3 + k] = Math.max(from[k]!, to[k]!)
    }
  })
  const isFar = (i: number, j: number, room: number): boolean => {
    for (let k = 0; k < 3; k++)
      if (
        boxes[6 * i + k]! - boxes[6 * j + 3 + k]! > room ||
        boxes[6 * j + k]! - boxes[6 * i + 3 + k]! > room
      )
        return true
    return false
  }
  for (let i = 0; i < all.length; i++)
    for (let j = i + 1; j < all.length; j++) {
      const a = all[i]!
      const b = all[j]!
      if (isFar(i, j, (a.thick + b.thick) / 2 + Math.max(between, others))) continue
      // at a rib one of the two bays has its screws at a slant
      if (
        a.wall !== null &&
        a.wall === b.wall &&
        a.of === b.of &&
        a.to[2] < a.from[2] !== b.to[2] < b.from[2]
      )
        continue
      looked++
      const wood = axesBetween(a, b) - (a.thick + b.thick) / 2
      const least = a.into === 'end' || b.into === 'end' ? between : others
      if (wood < least - 1e-4) found.push({ a, b, wood })
    }
  return { looked, found }
}
