import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { PaperName } from '../../../src/design/design.ts'
import { curvedOf } from '../../../src/design/kind-traits.ts'
import type { Drawing } from '../../../src/drawing/drawing.ts'
import {
  type Affine,
  affineApply,
  affineIdentity,
  affineInvert,
  affineThen,
} from '../../../src/geometry/affine.ts'
import { pathSample } from '../../../src/geometry/sample.ts'
import { readLength } from '../../../src/length.ts'
import type { Cover } from '../../../src/page/cover/cover.ts'
import { generatedQuarter, quarterText } from '../../bench/ramps.ts'
import { solvedText } from '../../support/covered.ts'
import { above } from '../../support/hold.ts'
import { layOut } from '../../support/lay-out.ts'
import { assertNear } from '../../support/near.ts'
import type { Pt } from '../../support/pt.ts'
import { randomFrom } from '../../support/random.ts'

const overlap = 12
const point = 72 / 25.4

const plotted = (text: string, paper: PaperName, cover: Cover) => {
  const { design, solved } = solvedText(text)
  const set = layOut(text, paper, cover)
  if (!set || solved.stopped) throw new Error('a design that stops')
  return { design, solved, set }
}

const pagesOf = ({ set }: ReturnType<typeof plotted>) =>
  set.plan.pages.map((planned, i) => ({ ...planned, drawing: set.pages[i]!.draw() }))

type Page = ReturnType<typeof pagesOf>[number]

const apart = (p: Pt, q: Pt): number => Math.hypot(p.x - q.x, p.y - q.y)

/** Of pages that were asked for before. */
const flatBefore = new WeakMap<Page, ReturnType<typeof flatAnew>>()

/** Strokes and words of a page with their places in its pattern. */
const flat = (page: Page): ReturnType<typeof flatAnew> => {
  const found = flatBefore.get(page) ?? flatAnew(page)
  flatBefore.set(page, found)
  return found
}

const flatAnew = (page: Page) => {
  const strokes: { readonly layer: string; readonly points: readonly Pt[] }[] = []
  const texts: { readonly layer: string; readonly at: Pt; readonly words: string }[] = []
  const walk = (drawing: Drawing, map: Affine): void => {
    for (const mark of drawing) {
      // a page is drawn in millimetres, the plan takes points
      const place = (p: Pt): Pt => {
        const { x, y } = affineApply(map, p)
        return affineApply(page.toPattern!, { x: x * point, y: y * point })
      }
      if (mark.kind === 'group') walk(mark.marks, affineThen(mark.map, map))
      else if (mark.kind === 'text') texts.push({ layer: mark.layer, at: place(mark.at), words: mark.text })
      else strokes.push({ layer: mark.layer, points: pathSample(mark.path, 1).map(place) })
    }
  }
  walk(page.drawing, affineIdentity)
  return { strokes, texts }
}

/** mm from a point to the nearest edge of a page's window, negative outside. */
const depth = (page: Page, p: Pt): number => {
  const { x, y } = affineApply(affineInvert(page.toPattern!), p)
  const [x0, y0, x1, y1] = page.window!
  return Math.min(x - x0, y - y0, x1 - x, y1 - y) / point
}

const templates = readdirSync('templates').map((name) => ({
  name,
  text: readFileSync(`templates/${name}`, 'utf8'),
}))
const jobs = templates.flatMap(({ name, text }) =>
  (['letter', 'a4'] as const).flatMap((paper) => {
    const whole = plotted(text, paper, 'ribbon')
    const pages = pagesOf(whole)
    return whole.set.groups.map((group) => ({
      what: `${name}, ${group.pattern.name}, ${paper}`,
      ...whole,
      group,
      tiles: pages.filter((page) => page.kind === 'tile' && page.pattern === group.pattern.name),
    }))
  }),
)

describe.each(jobs)('a ribbon: $what', ({ design, solved, group, tiles }) => {
  const { pattern, datums } = group
  const needed = pathSample(pattern.line, 1)
  const ramp = curvedOf(solved.ramps).find(({ name }) => name === pattern.ramp)!
  const { toe, lip } = ramp.transition

  it('holds every point that is needed half the overlap or more inside some window', () => {
    for (const p of needed)
      above(Math.max(...tiles.map((page) => depth(page, p))), overlap / 2 - 1e-6, `${p.x} ${p.y}`)
  })

  it('hangs together: neighbours lie a pitch apart along one side, and each page is reached', () => {
    const middles = tiles.map(({ toPattern, window }) => {
      const [x0, y0, x1, y1] = window!
      return affineApply(toPattern!, { x: (x0 + x1) / 2, y: (y0 + y1) / 2 })
    })
    const pitches = [0, 1].map((i) => (tiles[0]!.window![i + 2]! - tiles[0]!.window![i]!) / point - overlap)
    const reached = new Set([0])
    for (const from of reached)
      middles.forEach((p, to) => {
        const off = apart(p, middles[from]!)
        if (pitches.some((pitch) => Math.abs(off - pitch) < 1e-6)) reached.add(to)
      })
    expect(reached.size).toBe(tiles.length)
    // tiles are turned alike
    const [a, b] = tiles[0]!.toPattern!
    for (const { toPattern } of tiles) {
      assertNear(toPattern![0], a, 1e-9)
      assertNear(toPattern![1], b, 1e-9)
    }
  })

  it('has one straight snap line for all pages of a row, along it and across each of them', () => {
    const rows = new Map<string, Pt[]>()
    for (const tile of group.tiles) rows.set(tile.row, [...(rows.get(tile.row) ?? []), ...tile.snap])
    const pages = new Map(tiles.map((page) => [page.tile, page]))
    const directions = [...rows.values()].map((points) => {
      const [p, q] = [points[0]!, points.at(-1)!]
      for (const { x, y } of points)
        assertNear(((q.x - p.x) * (y - p.y) - (q.y - p.y) * (x - p.x)) / apart(p, q), 0, 1e-6)
      return Math.atan2(q.y - p.y, q.x - p.x)
    })
    for (const angle of directions) assertNear(angle, directions[0]!, 1e-9)
    for (const tile of group.tiles) {
      const page = pages.get(`${tile.number}`)!
      const [a, b] = tile.snap
      for (const end of [a, b]) assertNear(depth(page, end), 0, 1e-6)
      const drawn = flat(page).strokes.some(
        ({ layer, points }) =>
          layer === 'joint' && apart(points[0]!, a) < 1e-6 && apart(points.at(-1)!, b) < 1e-6,
      )
      expect(drawn, `${tile.number}`).toBe(true)
    }
  })

  it('has three crosses or more, far apart, at both ends, on the panel', () => {
    expect(datums.length).toBeGreaterThanOrEqual(3)
    const chord = apart(toe, lip)
    expect(Math.max(...datums.flatMap((a) => datums.map((b) => apart(a.at, b.at))))).toBeGreaterThan(
      0.6 * chord,
    )
    expect(Math.min(...datums.map(({ at }) => apart(at, toe)))).toBeLessThan(0.35 * chord)
    expect(Math.min(...datums.map(({ at }) => apart(at, lip)))).toBeLessThan(0.35 * chord)
    for (const { at } of datums) {
      expect(at.x).toBeGreaterThan(0)
      expect(at.y).toBeGreaterThan(0)
      expect(at.x).toBeLessThan(ramp.side!.length)
      expect(at.y).toBeLessThan(ramp.side!.height)
    }
  })

  it('draws each cross where its printed distances from front edge, bottom edge and their corner say', () => {
    let found = 0
    for (const page of tiles) {
      const { strokes, texts } = flat(page)
      for (const { at, letter } of datums.filter(({ tile }) => `${tile}` === page.tile)) {
        const arms = strokes.filter(
          ({ layer, points }) =>
            layer === 'datum' &&
            // a straight line, not a quarter of the disc between them
            apart(points[0]!, points.at(-1)!) > 1 &&
            apart(
              { x: (points[0]!.x + points.at(-1)!.x) / 2, y: (points[0]!.y + points.at(-1)!.y) / 2 },
              at,
            ) < 1e-6,
        )
        expect(arms.length).toBe(2)
        // along the panel's edges, as the builder sets it out, however the rows are turned
        const reach = arms.map(({ points }) => [
          Math.abs(points.at(-1)!.x - points[0]!.x),
          Math.abs(points.at(-1)!.y - points[0]!.y),
        ])
        for (const arm of reach) assertNear(Math.min(...arm), 0, 1e-6)
        expect(reach.map(([x, y]) => x! > y!).sort()).toEqual([false, true])
        expect(texts.some(({ words }) => words === `cross ${letter}`)).toBe(true)
        const says = (edge: string): number[] =>
          texts.flatMap(({ layer, words, at: place }) => {
            const said = new RegExp(`^(.*) from ${edge}$`).exec(words)?.[1]
            if (layer !== 'datum' || said === undefined || apart(place, at) > 20) return []
            // strong or shy: a 32nd of an inch more or less
            const more = said.endsWith('+') ? 25.4 / 32 : said.endsWith('–') ? -25.4 / 32 : 0
            const reading = readLength(said.replace(/[+–]$/, ''), design.units)
            return 'mm' in reading ? [reading.mm + more] : []
          })
        // crosses stand on round figures; their distance from the corner is printed to a millimetre or a 32nd
        const [front, bottom, corner] = [
          says('the front edge'),
          says('the bottom edge'),
          says('their corner'),
        ]
        expect([front.length, bottom.length, corner.length]).toEqual([1, 1, 1])
        assertNear(front[0]!, at.x, 1e-6)
        assertNear(bottom[0]!, at.y, 1e-6)
        assertNear(
          corner[0]!,
          Math.sqrt(at.x ** 2 + at.y ** 2),
          design.units === 'mm' ? 0.5 : 25.4 / 64 + 1e-6,
        )
        found++
      }
    }
    expect(found).toBe(datums.length)
  })

  it('keeps the station of every stud on the page that keeps its wood', () => {
    let kept = 0
    for (const { x, y } of ramp.studs) {
      const holding = tiles.filter((tile) => depth(tile, { x, y }) > 1)
      const drawn = holding.filter((page) => {
        const near = flat(page)
          .strokes.filter(({ layer }) => layer === 'mark')
          .map(({ points }) => Math.min(...points.map((p) => apart(p, { x, y }))))
        return Math.min(...near) < 0.6
      })
      // what the next page covers, or is trimmed off, is on one of the two
      if (holding.length > 0) expect(drawn.length).toBeGreaterThan(0)
      for (const page of holding.filter((tile) => depth(tile, { x, y }) > overlap + 1))
        expect(drawn).toContain(page)
      kept += drawn.length
    }
    expect(kept).toBeGreaterThanOrEqual(3)
  })
})

/** How far the farthest point of the line lies off, when the paper is laid by least squares to crosses that are set out wrongly. */
const layings = (
  line: readonly Pt[],
  crosses: readonly Pt[],
  cases: number,
  seed: number,
): readonly number[] => {
  const next = randomFrom(seed)
  const mean = (points: readonly Pt[]): Pt => ({
    x: points.reduce((sum, p) => sum + p.x, 0) / points.length,
    y: points.reduce((sum, p) => sum + p.y, 0) / points.length,
  })
  const centre = mean(crosses)
  return Array.from({ length: cases }, () => {
    const set = crosses.map(({ x, y }) => ({ x: x + next() - 0.5, y: y + next() - 0.5 }))
    const to = mean(set)
    let [cos, sin] = [0, 0]
    crosses.forEach((p, i) => {
      const [ax, ay, bx, by] = [p.x - centre.x, p.y - centre.y, set[i]!.x - to.x, set[i]!.y - to.y]
      cos += ax * bx + ay * by
      sin += ax * by - ay * bx
    })
    // a single cross leaves the paper free to turn: NaN, which is never within anything
    const size = Math.hypot(cos, sin)
    const [c, s] = [cos / size, sin / size]
    return Math.max(
      ...line.map((p) => {
        const [ax, ay] = [p.x - centre.x, p.y - centre.y]
        return Math.hypot(to.x + ax * c - ay * s - p.x, to.y + ax * s + ay * c - p.y)
      }),
    )
  })
}

const within = (off: readonly number[]): number => off.filter((mm) => mm <= 1).length / off.length

describe('crosses set out half a millimetre wrong', () => {
  it('turn a line by no more than they allow, two of them worked out by hand', () => {
    const crosses = [
      { x: 0, y: 0 },
      { x: 1000, y: 0 },
    ]
    const worst = Math.max(...layings([{ x: 0, y: 0 }], crosses, 2000, 1))
    // each axis half a millimetre at worst
    expect(worst).toBeLessThanOrEqual(Math.hypot(0.5, 0.5) + 1e-3)
    expect(worst).toBeGreaterThan(0.55)
    // twice as far out as the crosses reach: three half millimetres up, half a one along
    const far = Math.max(...layings([{ x: 2000, y: 0 }], crosses, 2000, 1))
    expect(far).toBeLessThanOrEqual(Math.hypot(1.5, 0.5) + 1e-2)
    expect(far).toBeGreaterThan(1.2)
    // one cross cannot hold paper
    expect(within(layings([{ x: 2000, y: 0 }], crosses.slice(0, 1), 10, 1))).toBe(0)
  })

  it.each(['line', 'ribbon'] as const)(
    'lay a %s within a millimetre all along, 99 times in 100, for every template',
    (cover) => {
      for (const { name, text } of templates)
        for (const paper of ['letter', 'a4'] as const)
          for (const { pattern, datums } of plotted(text, paper, cover).set.groups) {
            const crosses = datums.map(({ at }) => at)
            const off = layings(pathSample(pattern.line, 25), crosses, 2000, 11)
            expect(within(off), `${name} ${paper}`).toBeGreaterThanOrEqual(0.99)
          }
    },
  )

  it('lay the line of any ramp so, on any paper, however few its pages', () => {
    const papers = ['a4', 'a3', 'a1', 'letter', 'tabloid', 'a2'] as const
    const jobs = Array.from({ length: 48 }, (_, number) => ({
      number,
      paper: papers[number % papers.length]!,
      cover: number % 3 === 0 ? ('line' as const) : ('ribbon' as const),
    }))
    // their wood holds three crosses, all of them in one corner of the line
    const corners = (
      [
        [25, 'a4'],
        [46, 'a3'],
        [56, 'a4'],
      ] as const
    ).map(([number, paper]) => ({
      number,
      paper,
      cover: 'ribbon' as const,
    }))
    for (const { number, paper, cover } of [...jobs, ...corners]) {
      const { groups } = plotted(quarterText([generatedQuarter(number)]), paper, cover).set
      for (const { pattern, datums } of groups) {
        expect(datums.length, `${number} ${paper}`).toBeGreaterThanOrEqual(3)
        const crosses = datums.map(({ at }) => at)
        const chord = apart(pattern.points[0]!.at, pattern.points[1]!.at)
        const reach = Math.max(...crosses.flatMap((p) => crosses.map((q) => apart(p, q))))
        expect(reach / chord, `${number} ${paper}`).toBeGreaterThan(0.6)
        const off = layings(pathSample(pattern.line, 40), crosses, 800, number)
        expect(within(off), `${number} ${paper} ${cover}`).toBeGreaterThanOrEqual(0.99)
      }
    }
  })
})
