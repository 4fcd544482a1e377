import Flatten from '@flatten-js/core'
import { expect, test } from 'vitest'
import { copied, copyWay, laidSides, pagesLie } from '../../src/booklet/book/sections/cutting/copied-sides.ts'
import { sideEdges } from '../../src/booklet/cuts/side-edges.ts'
import { copyView, guideView, pagesOn } from '../../src/booklet/views/acts/panel-views.ts'
import { jigsawView, kerfLine } from '../../src/booklet/views/acts/tool-views.ts'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { readDesign } from '../../src/design/read.ts'
import type { Drawing } from '../../src/drawing/drawing.ts'
import { pathBounds, pointsBounds } from '../../src/geometry/bounds.ts'
import { pathDistance } from '../../src/geometry/nearest.ts'
import type { Point } from '../../src/geometry/point.ts'
import { doubleArea, outerPolygon } from '../../src/geometry/polygon/outer-polygon.ts'
import { pathSample } from '../../src/geometry/sample.ts'
import { coveredSides } from '../../src/job/booklet.ts'
import { coverDesign } from '../../src/job/covering.ts'
import { cutsJob } from '../../src/job/cuts.ts'
import { usualLaying } from '../../src/job/laying.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { covers as allCovers } from '../../src/page/cover/cover.ts'
import { tileGroups } from '../../src/page/set/tile-groups.ts'
import { sheetWindow } from '../../src/page/sheet/sheet.ts'
import { printerUncertainty } from '../../src/printer/uncertainty.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { assertNear } from '../support/near.ts'
import { templates, templateText } from '../support/templates.ts'

const panels = templates.flatMap((name) => {
  const reading = readDesign(templateText(name))
  if ('problems' in reading) throw new Error(name)
  const job = cutsJob(reading.design)
  if (isRefusal(job)) throw new Error(name)
  return job.sheets
    .flatMap((own) => own.panels)
    .flatMap((panel) =>
      panel.pieces.filter(({ second }) => second !== null).map((piece) => ({ panel, piece })),
    )
})

const marksOf = (view: ReturnType<typeof jigsawView>, name: string): Drawing =>
  view.parts.find((part) => part.name === name)!.marks

const polygonOf = (points: readonly { readonly x: number; readonly y: number }[]) =>
  new Flatten.Polygon([points.map(({ x, y }) => new Flatten.Point(x, y))])

test('pages come to lie on the place of their side as its outline does, whichever way it lies', () => {
  let looked = 0
  for (const { piece } of panels) {
    if (piece.part.piece) continue
    // of either hand from its front bottom corner backwards, as its pattern has it
    const { outline } = piece.part
    const { x0, x1 } = pathBounds(outline)
    const way = Math.abs(outline.start.x - x0) < Math.abs(outline.start.x - x1) ? 1 : -1
    const own = outerPolygon(outline, 0.02).map(({ x, y }) => ({
      x: way * (x - outline.start.x),
      y: y - outline.start.y,
    }))
    const [on] = pagesOn(piece, [own])
    for (const p of on!) {
      expect(pathDistance(piece.outline, p), piece.part.mark).toBeLessThan(0.05)
      looked++
    }
  }
  expect(looked).toBeGreaterThan(300)
})

/** Whether one shape, turned so far, covers the other wherever it lies; mm off at most, from corner to corner. */
const covers = (one: readonly Point[], other: readonly Point[], turn: (p: Point) => Point): boolean => {
  const [own, wanted] = [one.map(turn), other].map((points) => {
    const { x0, y0 } = pointsBounds(points)
    return points.map(({ x, y }) => ({ x: x - x0, y: y - y0 }))
  }) as [Point[], Point[]]
  return own.every((p) => wanted.some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 1))
}

test('a side is said and shown to be laid on its copy turned over, by half a turn, or straight on, as the two lie', () => {
  const seen = new Map<string, number>()
  for (const [name, count] of [
    ['quarter-mm', 2],
    ['quarter-mm', 4],
    ['pair-mm', 3],
    ['pair-mm', 5],
  ] as const) {
    const reading = readDesign(templateText(name).replaceAll('count: 2', `count: ${count}`))
    if ('problems' in reading) throw new Error(name)
    const job = cutsJob(reading.design)
    if (isRefusal(job)) throw new Error(name)
    for (const ramp of curvedOf(job.solved.ramps)) {
      const [first, ...others] = laidSides(job, ramp)
      const [own, ...rest] = [first!, ...others].map(({ piece }) => pathSample(piece.outline, 40))
      // a pattern goes round against the clock; print up and print down in one step cannot be done
      for (const [i, one] of [first!, ...others].entries()) {
        const mirrored = doubleArea([own!, ...rest][i]!) < 0
        expect(pagesLie(one).match(/print (up|DOWN)/g)).toEqual([mirrored ? 'print DOWN' : 'print up'])
      }
      others.forEach((other, i) => {
        const way = copyWay(first!, other)
        const half = covers(own!, rest[i]!, ({ x, y }) => ({ x: -x, y: -y }))
        const straight = covers(own!, rest[i]!, (p) => p)
        const alike = [90, 270].map((degrees) => {
          const sin = Math.sin((degrees * Math.PI) / 180)
          return covers(own!, rest[i]!, ({ x, y }) => ({ x: -y * sin, y: x * sin }))
        })
        expect(way === 'half a turn', `${name} ${count} ${other.piece.part.mark}`).toBe(half)
        expect(way === 'same face up').toBe(straight || alike.includes(true))
        const [said] = copied(first!, [other])
        expect(/turned half round/.test(said!)).toBe(half)
        expect(/mirror image/.test(said!)).toBe(way === 'turned over')
        const view = copyView(first!.piece, other.piece, way, 1 / 50)
        const words = marksOf(view, 'words')
        expect(words.some((mark) => mark.kind === 'text' && mark.text.startsWith(way))).toBe(true)
        if (way === 'turned over') {
          const [axis] = marksOf(view, 'turn')
          if (axis?.kind !== 'stroke') throw new Error('no axis')
          const [a, b] = [axis.path.start, axis.path.pieces[0]!.to]
          const [cos, sin] = [Math.cos, Math.sin].map((of) => of(2 * Math.atan2(b.y - a.y, b.x - a.x))) as [
            number,
            number,
          ]
          const over = ({ x, y }: Point): Point => ({ x: x * cos + y * sin, y: x * sin - y * cos })
          expect(covers(own!, rest[i]!, over), other.piece.part.mark).toBe(true)
        }
        seen.set(way, (seen.get(way) ?? 0) + 1)
      })
    }
  }
  for (const way of ['turned over', 'half a turn', 'same face up'])
    expect(seen.get(way), way).toBeGreaterThan(0)
})

const middleOf = (points: readonly Point[]): Point => {
  const { x0, y0, x1, y1 } = pointsBounds(points)
  return { x: (x0 + x1) / 2, y: (y0 + y1) / 2 }
}

test('the pages drawn on a side are those that plot lays, and carry the whole curve', () => {
  let [looked, pages] = [0, 0]
  for (const name of ['quarter-in', 'pair-mm', 'quarter-mm'])
    for (const cover of [null, ...allCovers]) {
      const reading = readDesign(templateText(name))
      if ('problems' in reading) throw new Error(name)
      const { design } = reading
      const laying = { ...usualLaying('a4'), cover }
      const solved = solveDesign(design)
      if (solved.stopped) throw new Error(name)
      const covering = coverDesign(design, solved, laying)
      const sides = coveredSides(covering)
      const { groups } = tileGroups(covering.covered, sheetWindow(laying.sheet), design.units, {
        cover: covering.cover,
        uncertainty: printerUncertainty(null),
      })
      expect(sides.map(({ ramp }) => ramp)).toEqual(groups.map(({ pattern }) => pattern.ramp))
      for (const [i, { ramp: named, cells }] of sides.entries()) {
        const { tiles } = groups[i]!
        expect(cells).toHaveLength(tiles.length)
        const middles = tiles.map(({ window }) => middleOf(window))
        for (const cell of cells) {
          const { x, y } = middleOf(cell)
          expect(Math.min(...middles.map((p) => Math.hypot(p.x - x, p.y - y)))).toBeLessThan(1e-6)
          pages++
        }
        const all = cells.map((cell) => polygonOf(cell))
        const ramp = solved.ramps.find((one) => one.name === named)!
        if (ramp.kind !== 'quarter') throw new Error(name)
        const { curve } = ramp.transition
        for (let k = 0; k <= 40; k++) {
          const { x, y } = curve.point(curve.toe + ((ramp.side.curveEnd - curve.toe) * k) / 40)
          expect(
            all.some(
              (one) =>
                one.distanceTo(new Flatten.Point(x, y))[0] < 0.5 || one.contains(new Flatten.Point(x, y)),
            ),
          ).toBe(true)
          looked++
        }
      }
    }
  expect(looked).toBe(4 * 4 * 41)
  expect(pages).toBeGreaterThan(100)
})

test('the guide lies on the wood that is kept, and STOP at the number that the order of cuts says', () => {
  const ratio = 1 / 50
  let [stops, guides] = [0, 0]
  for (const { panel, piece } of panels) {
    const edge = sideEdges(piece, panel, 'mm').find(({ cut }) => cut !== null)
    if (!edge) continue
    const view = guideView(panel, piece, edge, ratio)
    const said = /; STOP at (\d+),/.exec(edge.words)
    const bars = marksOf(view, 'stop').flatMap((mark) =>
      mark.kind === 'stroke' ? [pathBounds(mark.path)] : [],
    )
    expect(bars.length > 0).toBe(/; STOP/.test(edge.words))
    if (said && / along at /.test(edge.words)) {
      const [bar] = bars
      assertNear((bar!.x0 + bar!.x1) / 2 / ratio, Number(said[1]), 0.6, edge.words)
      stops++
    }
    const [guide] = marksOf(view, 'guide')
    if (guide?.kind !== 'fill') throw new Error('no guide')
    const middle = pathSample(guide.path, 1000).slice(0, 4)
    const [x, y] = [0, 1].map(
      (i) => middle.reduce((sum, p) => sum + (i === 0 ? p.x : p.y), 0) / middle.length / ratio,
    ) as [number, number]
    expect(polygonOf(outerPolygon(piece.outline, 0.05)).contains(new Flatten.Point(x, y)), edge.words).toBe(
      true,
    )
    guides++
  }
  expect(stops).toBeGreaterThanOrEqual(3)
  expect(guides).toBeGreaterThanOrEqual(10)
})

test('the jigsaw takes wood beside its line alone, all of it on the side of the waste', () => {
  const view = jigsawView('S1')
  const { centre, radius, width } = kerfLine
  const far = (name: string): readonly number[] =>
    marksOf(view, name).flatMap((mark) =>
      mark.kind === 'fill'
        ? pathSample(mark.path, 0.2).map(({ x, y }) => Math.hypot(x - centre.x, y - centre.y))
        : [],
    )
  assertNear(Math.max(...far('cut')), radius, 1e-6, 'the cut ends at the line')
  assertNear(Math.min(...far('cut')), radius - width, 0.05, 'and is as wide as the blade')
  assertNear(Math.min(...far('side')), radius, 0.05, 'what is kept begins at the line')
})
