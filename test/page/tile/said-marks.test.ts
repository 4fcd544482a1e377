import { expect, it } from 'vitest'
import { type Layer, layers, stroke } from '../../../src/drawing/drawing.ts'
import { affineIdentity, affineInvert } from '../../../src/geometry/affine.ts'
import { convexContains } from '../../../src/geometry/clip.ts'
import { pathOf } from '../../../src/geometry/path.ts'
import { tileTitleBlock, titleSize, titleWords } from '../../../src/page/pages/title-block.ts'
import { brokenStrokes, zonesBack } from '../../../src/page/tile/clear-zones.ts'
import { tileMap } from '../../../src/page/tile/tile.ts'
import { pens } from '../../../src/pattern/pens.ts'
import { above, below, hold } from '../../support/hold.ts'
import { layOut } from '../../support/lay-out.ts'
import { assertNear } from '../../support/near.ts'
import type { Pt } from '../../support/pt.ts'
import { opened } from '../../support/strokes.ts'
import { templateText } from '../../support/templates.ts'

const layerOf = (order: number): Layer => layers[Math.floor(order / 1e6)]!
const middle = (corners: readonly Pt[]): Pt => ({
  x: (corners[0]!.x + corners[2]!.x) / 2,
  y: (corners[0]!.y + corners[2]!.y) / 2,
})

/** The tiles of a set, and what each shows in the pattern's own mm. */
const shownOf = (text: string, cover: 'whole' | 'line' | 'ribbon') => {
  const set = layOut(text, 'a4', cover)!
  return set.groups.flatMap((group) =>
    group.tiles.map((tile) => {
      const page = set.plan.pages.findIndex((one) => one.tile === `${tile.number}`)
      return { group, tile, ...opened(set.pages[page]!.draw(), affineInvert(tileMap(tile))) }
    }),
  )
}

it('a joint of pieces says how it is sawn on each page that shows it, its pieces are named on their own sides in one size', () => {
  // so long behind the lip that no panel holds it whole
  const long = templateText('quarter-mm').replace('    deck: 500 ', '    deck: 2200 ')
  let [said, named] = [0, 0]
  const sizes = new Set<number>()
  for (const { group, tile, words } of shownOf(long, 'whole')) {
    expect(group.pattern.joints).toHaveLength(1)
    const [top, foot] = group.pattern.joints[0]!
    const count = 100
    const held = Array.from({ length: count }, (_, k) => ({
      x: foot.x + ((k + 0.5) / count) * (top.x - foot.x),
      y: foot.y + ((k + 0.5) / count) * (top.y - foot.y),
    })).filter((p) => convexContains(tile.cell, p)).length
    const mm = (held / count) * Math.hypot(top.x - foot.x, top.y - foot.y)
    const sawn = words.filter(({ text }) => text.startsWith('JOINT: saw'))
    expect(sawn.length, `${tile.number}`).toBe(mm > 30 ? 1 : mm < 10 ? 0 : sawn.length)
    said += sawn.length
    for (const { text, corners, size } of words.filter((word) => /^PIECE [ab]$/.test(word.text))) {
      sizes.add(Math.round(size * 100) / 100)
      expect(middle(corners).x < top.x, `${text} on ${tile.number}`).toBe(text === 'PIECE a')
      named++
    }
  }
  expect(said).toBeGreaterThan(2)
  expect(named).toBeGreaterThanOrEqual(4)
  expect(sizes.size).toBe(1)
})

it('a round notch tells half of the pipe as its radius, near the arc', () => {
  // the pipe is 48.3 outside, as the design says
  const found = shownOf(templateText('quarter-mm-round'), 'line').flatMap(({ group, words }) =>
    words.filter(({ text }) => text.startsWith('round notch: radius')).map((word) => ({ group, ...word })),
  )
  expect(found).toHaveLength(1)
  const [{ group, text, corners }] = found as [(typeof found)[number]]
  assertNear(Number(/radius ([\d.]+)/.exec(text)![1]), 48.3 / 2, 0.051)
  const off = Math.min(
    ...group.pattern.notch.map((p) => Math.hypot(middle(corners).x - p.x, middle(corners).y - p.y)),
  )
  expect(off).toBeLessThan(40)
})

it('a cross that is set out bears two opposite filled quarters and stands where its figures say, however its row is turned', () => {
  let seen = 0
  for (const { group, tile, lines, words } of shownOf(templateText('quarter-mm'), 'ribbon'))
    for (const { at, letter, tile: own } of group.datums) {
      if (own !== tile.number) continue
      const quarters = lines.filter(
        ({ kind, order, points }) =>
          kind === 'fill' &&
          layerOf(order) === 'datum' &&
          points.every((p) => Math.hypot(p.x - at.x, p.y - at.y) < 2.01),
      )
      expect(quarters).toHaveLength(2)
      const [p, q] = quarters.map(({ points }) => ({
        x: points.reduce((sum, one) => sum + one.x, 0) / points.length - at.x,
        y: points.reduce((sum, one) => sum + one.y, 0) / points.length - at.y,
      })) as [Pt, Pt]
      assertNear(p.x, -q.x, 1e-6)
      assertNear(p.y, -q.y, 1e-6)
      // between the arms, which lie along the panel's edges
      assertNear(Math.abs(p.x), Math.abs(p.y), 0.05)
      hold(words.some(({ text }) => text === `cross ${letter}`))
      seen++
    }
  expect(seen).toBe(4)
})

it('a dashed line begins and ends with a whole dash wherever it breaks off', () => {
  let seen = 0
  for (let k = 0; k < 40; k++) {
    const line = stroke('mark', pathOf({ x: 0, y: 0 }, { x: 40 + 3.7 * k, y: 0 }), pens.stud)
    const zone = [
      { x: 20, y: -1 },
      { x: 24, y: -1 },
      { x: 24, y: 1 },
      { x: 20, y: 1 },
    ]
    for (const mark of brokenStrokes([line], zonesBack(k % 2 === 0 ? [] : [zone], affineIdentity))) {
      if (mark.kind !== 'stroke') continue
      const [on, off] = mark.pen.dash as readonly [number, number]
      const long = Math.abs(mark.path.pieces[0]!.to.x - mark.path.start.x)
      const gaps = (long - on) / (on + off)
      assertNear((gaps - Math.round(gaps)) * (on + off), 0, 0.05)
      // no more than a third longer or shorter than its pen
      above(on / pens.stud.dash[0], 0.66)
      below(on / pens.stud.dash[0], 1.34)
      seen++
    }
  }
  expect(seen).toBe(60)
})

it('a title stays within the size that is kept for it in each of its forms, its map under its arrows where it is stacked', () => {
  const set = layOut(templateText('quarter-mm'), 'a4', 'line')!
  const { pattern, tiles } = set.groups[0]!
  let seen = 0
  for (const tile of tiles)
    for (const form of ['mapped', 'stacked', 'plain', 'narrow'] as const) {
      const facts = {
        title: 'T',
        pattern,
        total: 9,
        set: 'S',
        units: 'mm',
        start: tiles[0]!,
        timbers: [],
        printer: null,
      } as const
      const size = titleSize(tile, titleWords(tile, facts), form)
      const { width, height } = size
      const { lines, words } = opened(tileTitleBlock(tile, facts, form, size))
      const all = [...lines.flatMap(({ points }) => points), ...words.flatMap(({ corners }) => corners)]
      for (const p of all) {
        above(p.x, -0.3)
        below(p.x, width + 0.3)
        above(p.y, -1)
        below(p.y, height + 0.3)
      }
      const map = lines.filter(({ kind, grey }) => kind === 'fill' && grey === 0.55)
      expect(map).toHaveLength(form === 'mapped' || form === 'stacked' ? 1 : 0)
      const up = words.find(({ text }) => text === 'UP')!
      if (form === 'stacked')
        below(Math.max(...map[0]!.points.map(({ y }) => y)), Math.min(...up.corners.map(({ y }) => y)))
      seen++
    }
  expect(seen).toBe(4 * tiles.length)
})
