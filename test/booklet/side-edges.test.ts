import Flatten from '@flatten-js/core'
import { expect, test } from 'vitest'
import { sideEdges } from '../../src/booklet/cuts/side-edges.ts'
import { readDesign } from '../../src/design/read.ts'
import { outerPolygon } from '../../src/geometry/polygon/outer-polygon.ts'
import { cutsJob } from '../../src/job/cuts.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { isMirrored, type Panel, type PanelPiece } from '../../src/stock/panel/panels.ts'
import { templates, templateText } from '../support/templates.ts'

const polygonOf = ({ outline }: PanelPiece) =>
  new Flatten.Polygon([outerPolygon(outline, 0.02).map(({ x, y }) => new Flatten.Point(x, y))])

const panelsOf = (text: string): readonly Panel[] => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(text)
  const job = cutsJob(reading.design)
  if (isRefusal(job)) throw new Error(text)
  return job.sheets.flatMap((sheet) => sheet.panels)
}

const panels = templates
  .flatMap((name) => panelsOf(templateText(name)))
  .filter(({ pieces }) => pieces.some(({ second }) => second !== null))

test('the blade runs in the waste beside each straight edge of a side, and the edges lie on its outline', () => {
  let looked = 0
  for (const panel of panels)
    for (const piece of panel.pieces.filter(({ second }) => second !== null)) {
      const polygon = polygonOf(piece)
      const edges = sideEdges(piece, panel, 'mm')
      expect(edges.map(({ letter }) => letter).join('')).toBe('abcdefgh'.slice(0, edges.length))
      expect(edges.at(-1)!.words).toMatch(/curve: jigsaw/)
      for (const { words, at } of edges.slice(0, -1)) {
        const [, side] = /blade (below|above|left|right|outside)/.exec(words)!
        expect(polygon.distanceTo(new Flatten.Point(at.x, at.y))[0]).toBeLessThan(0.05)
        const way = { below: [0, -3], above: [0, 3], left: [-3, 0], right: [3, 0] }[side!]
        if (!way) continue
        looked++
        expect(polygon.contains(new Flatten.Point(at.x + way[0]!, at.y + way[1]!))).toBe(false)
        expect(polygon.contains(new Flatten.Point(at.x - way[0]!, at.y - way[1]!))).toBe(true)
      }
    }
  expect(looked).toBeGreaterThan(30)
})

test('a saw stops where a piece that is not yet sawn out lies within 60 beyond the end of an edge, and nowhere else', () => {
  const pair = panels.find(({ pieces }) => pieces.length === 4 && pieces.every(({ second }) => second))!
  const turn = (mark: string) => pair.steps.findIndex((step) => step.kind === 'out' && step.mark === mark)
  let stops = 0
  for (const piece of pair.pieces) {
    const own = sideEdges(piece, pair, 'mm')
    const later = pair.pieces.filter(({ part }) => turn(part.mark) > turn(piece.part.mark))
    for (const { words, at } of own.slice(0, -1)) {
      const level = / (?:below|above)/.test(words)
      // its ends: the farthest points of the outline on the edge's line
      const on = outerPolygon(piece.outline, 0.02).filter(
        (p) => Math.abs(level ? p.y - at.y : p.x - at.x) < 0.01,
      )
      const along = on.map((p) => (level ? p.x : p.y))
      const past = [Math.min(...along), Math.max(...along)].map((end, i) => {
        const far = end + (i === 0 ? -60 : 60)
        const [a, b] = level
          ? [new Flatten.Point(end, at.y), new Flatten.Point(far, at.y)]
          : [new Flatten.Point(at.x, end), new Flatten.Point(at.x, far)]
        return later.filter((other) => new Flatten.Segment(a, b).distanceTo(polygonOf(other))[0] < 4.9)
      })
      const ends = [Math.min(...along), Math.max(...along)].map((end) => Math.round(end))
      expect(words, piece.part.mark).toContain(`, ${ends[0]} to ${ends[1]}, blade`)
      past.forEach((met, i) => {
        const said = new RegExp(`(?:STOP|and) at ${ends[i]}, ([\\w ,]+?) lies? beyond`).exec(words)
        expect(said !== null, `${piece.part.mark} ${words}`).toBe(met.length > 0)
        if (!said) return
        expect(said[1]!.split(/, | and /).sort()).toEqual(met.map(({ part }) => part.mark).sort())
        stops++
      })
    }
  }
  expect(stops).toBeGreaterThan(2)
})

test('the sides that lie as their pages do are sawn first, and a jigsaw has 10 between two pieces where the templates leave room', () => {
  let gaps = 0
  for (const { pieces, steps } of panels) {
    const outs = steps.flatMap((step) =>
      step.kind === 'out' && !step.square ? [pieces.find(({ part }) => part.mark === step.mark)!] : [],
    )
    const mirrored = outs.map(isMirrored)
    expect([...mirrored].sort()).toEqual(mirrored)
    outs.forEach((a, i) => {
      for (const b of outs.slice(i + 1)) {
        gaps++
        expect(polygonOf(a).distanceTo(polygonOf(b))[0]).toBeGreaterThan(9.7)
      }
    })
  }
  expect(gaps).toBeGreaterThan(8)
})

test('each step of a side in pieces names what is sawn: a piece without a curve leaves the jigsaw nothing', () => {
  const long = templateText('quarter-mm')
    .replace(/^ {4}width: .*$/m, '    width: 1800')
    .replace(/^ {4}deck: .*$/m, '    deck: 2000')
  const panelsOfLong = panelsOf(long)
  const pieces = panelsOfLong.flatMap((panel) => panel.pieces.map((piece) => ({ piece, panel })))
  const straight = pieces.filter(({ piece: { part } }) => part.piece !== null && !part.piece.lip)
  expect(straight.length).toBeGreaterThan(1)
  for (const { piece, panel } of straight) {
    const edges = sideEdges(piece, panel, 'mm')
    expect(edges.length).toBeGreaterThan(1)
    for (const { words, cut } of edges) {
      expect(words).toMatch(/^\w/)
      expect(cut, words).not.toBeNull()
    }
  }
})
