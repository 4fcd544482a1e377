import { expect, it } from 'vitest'
import { layers } from '../../../src/drawing/drawing.ts'
import { affineApply } from '../../../src/geometry/affine.ts'
import { convexContains, pathClip } from '../../../src/geometry/clip.ts'
import { pathLength } from '../../../src/geometry/length.ts'
import { pathOf, pathSegments } from '../../../src/geometry/path.ts'
import { type Point, pointAngle, pointBetween, pointDistance } from '../../../src/geometry/point.ts'
import { convexHull } from '../../../src/geometry/polygon/hull.ts'
import { type Tile, tileMap } from '../../../src/page/tile/tile.ts'
import { jointMarks } from '../../../src/page/tile/tile-joints.ts'
import type { Pattern } from '../../../src/pattern/pattern.ts'
import { above, below, hold } from '../../support/hold.ts'
import { layOut } from '../../support/lay-out.ts'
import { type Opened, opened } from '../../support/strokes.ts'
import { templates, templateText } from '../../support/templates.ts'
import { jobOf } from '../../tape-up/jobs.ts'

interface Sheet {
  readonly where: string
  readonly tile: Tile
  readonly pattern: Pattern
  readonly drawn: Opened
  /** sections of the timbers on the page, by their names */
  readonly sections: ReadonlyMap<string, readonly Point[]>
}

const designs = [
  ...templates.map((name) => ({ name, text: templateText(name) })),
  ...[801, 804].map((number) => ({ name: `${number}`, text: jobOf(number).text })),
  // of two pieces
  {
    name: 'spliced',
    text: templateText('quarter-mm').replace('deck: 500 ', 'deck: 2200 '),
  },
]

const sheets: readonly Sheet[] = designs.flatMap(({ name, text }) =>
  (['whole', 'line', 'ribbon'] as const).flatMap((cover) => {
    const set = layOut(text, /units: in/.test(text) ? 'letter' : 'a4', cover)
    return (set?.groups ?? []).flatMap(({ pattern, tiles }) =>
      tiles.map((tile): Sheet => {
        const page = set!.plan.pages.findIndex((one) => one.tile === `${tile.number}`)
        const map = tileMap(tile)
        return {
          where: `${name} ${cover} ${tile.number}`,
          tile,
          pattern,
          drawn: opened(set!.pages[page]!.draw()),
          sections: new Map(
            pattern.screws.map(({ called, timber }, i) => [
              `${called} ${timber}`,
              pathSegments(pattern.markPaths[i]!).map(({ from }) => affineApply(map, from)),
            ]),
          ),
        }
      }),
    )
  }),
)

const onLayer = (order: number, layer: (typeof layers)[number]): boolean =>
  layers[Math.floor(order / 1e6)] === layer

/** Names of timbers on a page, each with its frame where it stands in one. */
const namesOf = ({ drawn: { words, lines } }: Sheet) =>
  words
    .filter(({ text, order }) => onLayer(order, 'mark') && /^(stud|timber) \d+/.test(text))
    .map(({ text, corners }) => ({
      name: /^\w+ \d+/.exec(text)![0],
      corners,
      frame: lines.find(
        ({ kind, grey, order, points }) =>
          kind === 'fill' &&
          grey === 0 &&
          points.length === 5 &&
          onLayer(order, 'mark') &&
          convexContains(convexHull(points), pointBetween(corners[0]!, corners[2]!, 0.5)),
      )?.points,
    }))

it('a name without a box stands wholly on its own timber, a box on none, and its line begins 3 mm within the timber', () => {
  const seen = { without: 0, boxes: 0 }
  for (const sheet of sheets) {
    const { where, sections, drawn } = sheet
    for (const { name, corners, frame } of namesOf(sheet)) {
      const own = sections.get(name)!
      if (!frame) {
        for (const p of corners) hold(convexContains(own, p, 0.1), `${where} ${name}`)
        seen.without++
        continue
      }
      const sides = [...frame.slice(1), ...frame.slice(1).map((p, i) => pointBetween(p, frame[i]!, 0.5))]
      for (const [other, section] of sections)
        for (const p of sides) hold(!convexContains(section, p, -1), `${where} ${name} on ${other}`)
      const dots = drawn.lines.filter(
        ({ kind, points, order }) => kind === 'fill' && points.length > 6 && onLayer(order, 'mark'),
      )
      const middles = dots.map(({ points }) => ({
        x: points.slice(1).reduce((sum, p) => sum + p.x, 0) / (points.length - 1),
        y: points.slice(1).reduce((sum, p) => sum + p.y, 0) / (points.length - 1),
      }))
      hold(
        middles.some((p) => convexContains(own, p, -2.9)),
        `${where} ${name}`,
      )
      seen.boxes++
    }
  }
  expect(seen.without).toBeGreaterThan(300)
  expect(seen.boxes).toBeGreaterThan(5)
})

it('an X lies on one timber, none of its strokes within 20° of an edge of it, and never looks like a plus', () => {
  let crosses = 0
  for (const { where, drawn, sections } of sheets) {
    const strokes = drawn.lines.filter(
      ({ kind, points, width, order }) =>
        kind === 'stroke' &&
        points.length === 2 &&
        width === 0.25 &&
        onLayer(order, 'mark') &&
        [8, 10, 12].some((mm) => Math.abs(pointDistance(points[0]!, points[1]!) - mm) < 1e-6),
    )
    const middle = ({ points }: (typeof strokes)[number]): Point => pointBetween(points[0]!, points[1]!, 0.5)
    strokes.forEach((one, i) => {
      const two = strokes.slice(i + 1).find((other) => pointDistance(middle(one), middle(other)) < 1e-6)
      if (!two) return
      const turned = (points: readonly Point[], from: number): number => {
        const turn = Math.abs((pointAngle(points[0]!, points[1]!) - from) % Math.PI)
        return (180 / Math.PI) * Math.min(turn, Math.PI - turn)
      }
      below(turned(one.points, pointAngle(two.points[0]!, two.points[1]!)), 75, where)
      const own = [...sections.values()].filter((section) =>
        [...one.points, ...two.points].every((p) => convexContains(section, p, 0)),
      )
      above(own.length, 0, where)
      const edge = pointAngle(own[0]![0]!, own[0]![1]!)
      for (const { points } of [one, two]) {
        above(turned(points, edge), 20, where)
        above(turned(points, edge + Math.PI / 2), 20, where)
      }
      crosses++
    })
  }
  expect(crosses).toBeGreaterThan(200)
})

it('what a page shows of a joint of pieces is named on it', () => {
  let named = 0
  for (const { where, tile, pattern, drawn } of sheets) {
    const shown = pattern.joints
      .flatMap((joint) => pathClip(pathOf(...joint), tile.cell))
      .filter((path) => pathLength(path) > 40)
    const words = drawn.words.filter(({ text }) => /^JOINT: saw/.test(text))
    if (shown.length === 0) continue
    expect(words.length, where).toBe(shown.length)
    named++
  }
  expect(named).toBeGreaterThan(2)
})

it('a joint line breaks off round the rings of screws that the page draws, and runs through else', () => {
  let set = 0
  for (const { where, tile, pattern, drawn } of sheets) {
    // joint lines keep off screws: one is set on each, and a joint line is looked for in the window
    for (const { line } of tile.joints) {
      const at = pointBetween(...line, 0.37)
      const ends = line.map((q) => affineApply(tile.toWindow, q)) as [Point, Point]
      const p = affineApply(tile.toWindow, at)
      const struckBy = (screws: readonly Point[]): number =>
        jointMarks(tile, screws).filter(
          (mark) =>
            mark.kind === 'stroke' &&
            mark.pen.dash &&
            [mark.path.start, mark.path.pieces[0]!.to].every((q) => away(...ends, q) < 1e-6) &&
            away(mark.path.start, mark.path.pieces[0]!.to, p) < 2,
        ).length
      expect([where, struckBy([at]), struckBy([])]).toEqual([where, 0, 1])
      set++
    }
    const map = tileMap(tile)
    const lines = drawn.lines.filter(
      ({ kind, width, order, points }) =>
        kind === 'stroke' && width === 0.2 && points.length === 2 && onLayer(order, 'joint'),
    )
    const ends = tile.joints.map(({ line }) => line.map((p) => affineApply(map, p)))
    for (const at of pattern.screws.flatMap(({ middles }) => middles)) {
      const p = affineApply(map, at)
      if (!ends.some(([a, b]) => away(a!, b!, p) < 2)) continue
      const struck = lines.filter(
        ({ points: [a, b] }) =>
          ends.some(([c, d]) => away(c!, d!, a!) + away(c!, d!, b!) < 1e-6) && away(a!, b!, p) < 2,
      )
      if (convexContains(tile.cell, at)) {
        expect(struck, where).toEqual([])
      } else {
        above(struck.length, 0, where)
      }
    }
  }
  expect(set).toBeGreaterThan(100)
})

/** Of a point from a straight line between two, mm. */
const away = (a: Point, b: Point, p: Point): number => {
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  const t = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)))
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy)
}

it('of two timbers that lie nearly alike on a page not one is named upwards and the other down', () => {
  let [pairs, upright] = [0, 0]
  for (const { where, drawn } of sheets) {
    const turns = drawn.words.flatMap(({ text, corners: [a, b] }) =>
      /^(stud|timber) \d+/.test(text) ? [pointAngle(a!, b!)] : [],
    )
    for (const [i, turn] of turns.entries()) {
      if (Math.abs(Math.cos(turn)) < 0.2) upright++
      for (const other of turns.slice(i + 1)) {
        // less than 25° from the opposite way
        above(Math.cos(turn - other), -0.906, where)
        pairs++
      }
    }
  }
  expect(pairs).toBeGreaterThan(150)
  expect(upright).toBeGreaterThan(40)
})
