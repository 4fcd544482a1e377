import { describe, expect, it } from 'vitest'
import { assertNear } from '../../support/near.ts'
import type { Pt } from '../../support/pt.ts'
import { randomFrom } from '../../support/random.ts'
import type { PdfText } from '../../support/read-page.ts'
import { templates, templateText } from '../../support/templates.ts'
import { plotJob } from '../../tape-up/plot.ts'
import {
  type Beside,
  mapPoint,
  neighboursOf,
  type Side,
  type Tile,
  tilesOf as tilesRead,
} from '../../tape-up/tape.ts'

const apart = (p: Pt, q: Pt): number => Math.hypot(p.x - q.x, p.y - q.y)

/** Straight strokes of a page's joint layer, true page mm. */
const straights = (tile: Tile): readonly (readonly [Pt, Pt])[] =>
  tile.read.strokes
    .filter(({ layer }) => layer === 'joint')
    .flatMap(({ path }) => {
      const [move, line, ...more] = path
      return move?.kind === 'move' && line?.kind === 'line' && more.length === 0
        ? [[mapPoint(tile.writtenToTrue, move.to), mapPoint(tile.writtenToTrue, line.to)] as const]
        : []
    })

/** A joint as one of its pages shows it. */
interface Shown {
  readonly tile: Tile
  readonly beside: Beside
  /** places along the joint line of the ticks that stand on it, one list for each scale; the longest tick is the zero */
  readonly scales: readonly { readonly zero: number; readonly ticks: readonly number[] }[]
  /** the number in the half circle, and where the circle's middle lies in the pattern */
  readonly pair: { readonly number: string; readonly at: Pt }
}

const shown = (tile: Tile, beside: Beside): Shown => {
  const upright = beside.side === 'left' || beside.side === 'right'
  const [off, along] = upright
    ? [(p: Pt) => Math.abs(p.x - beside.at), (p: Pt) => p.y]
    : [(p: Pt) => Math.abs(p.y - beside.at), (p: Pt) => p.x]
  const inside = { left: 1, bottom: 1, right: -1, top: -1 }[beside.side]
  const depth = (p: Pt): number => inside * ((upright ? p.x : p.y) - beside.at)
  const ticks = straights(tile)
    .map(([a, b]) => (off(a) < off(b) ? ([a, b] as const) : ([b, a] as const)))
    .filter(
      ([foot, top]) =>
        off(foot) < 0.005 &&
        Math.abs(along(foot) - along(top)) < 0.005 &&
        depth(top) > 2 &&
        depth(top) < 5.01,
    )
    .map(([foot, top]) => ({ at: along(foot), length: depth(top) }))
  const zeros = ticks.filter(({ length }) => Math.abs(length - 5) < 0.01).map(({ at }) => at)
  const scales = zeros.map((zero) => ({
    zero,
    ticks: ticks.map(({ at }) => at).filter((at) => Math.abs(at - zero) < 19),
  }))

  const arcs = tile.read.strokes
    .filter(({ layer, path }) => layer === 'joint' && path.some(({ kind }) => kind === 'cubic'))
    .map(({ path }) => {
      const ends = path.flatMap((s) => (s.kind === 'close' ? [] : [mapPoint(tile.writtenToTrue, s.to)]))
      const [first, last] = [ends[0]!, ends.at(-1)!]
      return { x: (first.x + last.x) / 2, y: (first.y + last.y) / 2, radius: apart(first, last) / 2 }
    })
    .filter((arc) => off(arc) < 0.005)
  if (arcs.length !== 1) throw new Error(`page ${tile.page}, ${beside.side}: ${arcs.length} half circles`)
  const middle = arcs[0]!
  const numbers = tile.read.texts
    .filter(({ layer, text }) => layer === 'joint' && /^\d+–\d+$/.test(text))
    .filter((text) => {
      const p = mapPoint(tile.writtenToTrue, text)
      return apart(p, middle) < middle.radius && depth(p) > 0
    })
  if (numbers.length !== 1)
    throw new Error(`page ${tile.page}, ${beside.side}: ${numbers.length} numbers in the half circle`)
  return {
    tile,
    beside,
    scales,
    pair: { number: numbers[0]!.text, at: mapPoint(tile.trueToPattern, middle) },
  }
}

/** The slip that the scales tell when the page over is moved by `slip` along the joint: a builder looks for the tick that runs through. */
const readSlip = (over: Shown, under: Shown, scale: number, slip: number): number => {
  // the pages of a joint read the line the same way round, or they would not meet
  const o = over.scales[scale]!
  const there = (at: number): number => {
    const upright = over.beside.side === 'left' || over.beside.side === 'right'
    const p = mapPoint(
      over.tile.patternToTrue,
      mapPoint(
        under.tile.trueToPattern,
        upright ? { x: under.beside.at, y: at } : { x: at, y: under.beside.at },
      ),
    )
    return upright ? p.y : p.x
  }
  const u = under.scales
    .map(({ zero, ticks }) => ({ zero: there(zero), ticks: ticks.map(there) }))
    .reduce((best, s) => (Math.abs(s.zero - o.zero) < Math.abs(best.zero - o.zero) ? s : best))
  let nearest = { gap: Number.POSITIVE_INFINITY, tick: 0 }
  for (const a of o.ticks)
    for (const b of u.ticks) {
      const gap = Math.abs(a + slip - b)
      if (gap < nearest.gap) nearest = { gap, tick: Math.round((b - u.zero) / 1.9) }
    }
  // 2.0·n + slip = 1.9·n (reference.md §11: the step is the difference of the pitches)
  return -0.1 * nearest.tick
}

const jobs = templates.flatMap((name) =>
  (
    [
      ['letter', 'whole'],
      ['a4', 'line'],
      ['letter', 'ribbon'],
    ] as const
  ).map(([paper, cover]) => ({ name, paper, cover, text: templateText(name) })),
)

describe.each(jobs)('the joints of $name on $paper, $cover', (job) => {
  const sides: readonly Side[] = ['left', 'right', 'bottom', 'top']
  const opposite: Record<Side, Side> = { left: 'right', right: 'left', bottom: 'top', top: 'bottom' }
  const joints = plotJob(job).then((plotted) => {
    if ('stops' in plotted) throw new Error(JSON.stringify(plotted.stops))
    const tiles = tilesRead(plotted)
    const all = tiles.flatMap((tile) => neighboursOf(tile, tiles).map((beside) => shown(tile, beside)))
    const pairs = all
      .filter(({ tile, beside }) => beside.tile.number < tile.number)
      .map((over) => {
        const under = all.find((s) => s.tile === over.beside.tile && s.beside.tile === over.tile)!
        return { over, under }
      })
    return { tiles, all, pairs }
  })

  it('tell a slip of up to 0.9 mm within 0.1 mm, at either scale', async () => {
    const { pairs } = await joints
    const random = randomFrom(31)
    expect(pairs.length).toBeGreaterThan(0)
    // one alone where the cut line or a screw leaves room for no second
    const count = pairs.reduce((sum, { over }) => sum + over.scales.length, 0)
    expect(count).toBeGreaterThan(1.2 * pairs.length)
    // none where a joint runs 5 mm beside both screws of an upright timber
    const bare = pairs.filter(({ over }) => over.scales.length === 0)
    const beside = job.name === 'quarter-in' && job.paper === 'letter' && job.cover === 'whole'
    expect(bare.length).toBeLessThanOrEqual(beside ? 1 : 0)
    for (const { over, under } of pairs) {
      expect([0, 1, 2]).toContain(over.scales.length)
      expect(under.scales).toHaveLength(over.scales.length)
      for (const scale of over.scales.keys())
        for (let i = 0; i < 10; i++) {
          const slip = 0.9 * (2 * random() - 1)
          assertNear(
            readSlip(over, under, scale, slip),
            slip,
            0.0505,
            `pages ${over.tile.page}, ${under.tile.page}`,
          )
        }
    }
  })

  it('have a number of their own, the same in the same place on both pages and on no other', async () => {
    const { all, pairs } = await joints
    const count = new Map<string, number>()
    for (const { pair } of all) count.set(pair.number, (count.get(pair.number) ?? 0) + 1)
    expect([...count.values()].every((n) => n === 2)).toBe(true)
    expect(count.size).toBe(pairs.length)
    for (const { over, under } of pairs) {
      expect(over.pair.number).toBe(under.pair.number)
      assertNear(apart(over.pair.at, under.pair.at), 0, 0.005, 'halves of the circle')
    }
  })

  it('show any two pages that lie in each other’s places', async () => {
    const { tiles, all } = await joints
    const numberAt = (tile: Tile, side: Side): string | undefined =>
      all.find((s) => s.tile === tile && s.beside.side === side)?.pair.number
    const neighbour = (tile: Tile, side: Side): Tile | undefined =>
      all.find((s) => s.tile === tile && s.beside.side === side)?.beside.tile
    for (const one of tiles)
      for (const other of tiles) {
        if (other.number <= one.number) continue
        const lies = (place: Tile): Tile => (place === one ? other : place === other ? one : place)
        const seen = [one, other].some((place) =>
          sides.some((side) => {
            const beside = neighbour(place, side)
            return beside && numberAt(lies(place), side) !== numberAt(lies(beside), opposite[side])
          }),
        )
        // a page without neighbours has no joint that could be wrong
        expect(
          seen || (!sides.some((s) => neighbour(one, s)) && !sides.some((s) => neighbour(other, s))),
        ).toBe(true)
      }
  })

  it('are trimmed on the left and lower edges of every page, as it is read, and nowhere else', async () => {
    const { all, tiles } = await joints
    const trims = (text: PdfText): boolean =>
      text.layer === 'joint' && /: trim( on the line)?$/.test(text.text)
    const goesUnder = (text: PdfText): boolean =>
      text.layer === 'joint' && /^(goes )?under page/.test(text.text)
    /** the words lie in the strip outside the joint line */
    const beyond = ({ tile, beside }: Shown, text: PdfText): boolean => {
      const p = mapPoint(tile.writtenToTrue, text)
      const far = {
        left: beside.at - p.x,
        right: p.x - beside.at,
        bottom: beside.at - p.y,
        top: p.y - beside.at,
      }[beside.side]
      return far > 0
    }
    for (const tile of tiles) {
      // a turned drawing has its own left edge at the page's bottom, its lower edge at the page's right
      const note = tile.read.texts.find(({ layer, text }) => layer === 'note' && /^page \d+ of/.test(text))!
      const turned = Math.abs(Math.sin(note.angle)) > 0.5
      const edges: readonly Side[] = turned ? ['bottom', 'right'] : ['left', 'bottom']
      const own = all.filter((s) => s.tile === tile)
      for (const joint of own) {
        const over = joint.beside.tile.number < tile.number
        expect(edges.includes(joint.beside.side), `page ${tile.page} ${joint.beside.side}`).toBe(over)
        const words = tile.read.texts.filter((text) => beyond(joint, text))
        const said = `page ${joint.beside.tile.number}`
        expect(words.some((text) => (over ? trims(text) : goesUnder(text)) && text.text.includes(said))).toBe(
          true,
        )
      }
      expect(tile.read.texts.filter(trims)).toHaveLength(
        own.filter((joint) => edges.includes(joint.beside.side)).length,
      )
    }
  })
})
