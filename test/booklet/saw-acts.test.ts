import Flatten from '@flatten-js/core'
import { expect, test } from 'vitest'
import { sideEdges } from '../../src/booklet/cuts/side-edges.ts'
import { guideView, pagesOver } from '../../src/booklet/views/acts/panel-views.ts'
import { jigsawView, kerfLine } from '../../src/booklet/views/acts/tool-views.ts'
import { readDesign } from '../../src/design/read.ts'
import type { Drawing } from '../../src/drawing/drawing.ts'
import { pathBounds } from '../../src/geometry/bounds.ts'
import { outerPolygon } from '../../src/geometry/polygon/outer-polygon.ts'
import { pathSample } from '../../src/geometry/sample.ts'
import { cutsJob } from '../../src/job/cuts.ts'
import { isRefusal } from '../../src/job/refusal.ts'
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

test('taped pages lie with a corner on the toe corner, an edge along the bottom edge, and cover the whole outline', () => {
  const page = { width: 190, height: 250 }
  let looked = 0
  for (const { piece } of panels) {
    const pages = pagesOver(piece, page)
    const all = pages.map((corners) => polygonOf(corners))
    for (const { x, y } of pathSample(piece.outline, 60)) {
      const away = Math.min(...all.map((one) => one.distanceTo(new Flatten.Point(x, y))[0]))
      const inside = all.some((one) => one.contains(new Flatten.Point(x, y)))
      // a corner of the outline may just leave a page between two looks
      expect(inside || away < page.width / 8).toBe(true)
      looked++
    }
    const near = Math.min(...pages.flat().map(({ x, y }) => Math.hypot(x - piece.x, y - piece.y)))
    assertNear(near, 0, 1e-6, 'corner')
    for (const one of all) assertNear(Math.abs(one.area()), page.width * page.height, 1e-3, 'page')
  }
  expect(looked).toBeGreaterThan(300)
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
