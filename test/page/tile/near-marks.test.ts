import { expect, it } from 'vitest'
import { type Drawing, layers, stroke, text } from '../../../src/drawing/drawing.ts'
import { affineApply, affineInvert } from '../../../src/geometry/affine.ts'
import { convexContains, pathClip } from '../../../src/geometry/clip.ts'
import { pathDistance } from '../../../src/geometry/nearest.ts'
import { pathOf } from '../../../src/geometry/path.ts'
import { type Point, pointBetween } from '../../../src/geometry/point.ts'
import type { TileGroup } from '../../../src/page/set/tile-groups.ts'
import { type Tile, tileMap } from '../../../src/page/tile/tile.ts'
import { layOut } from '../../support/lay-out.ts'
import { nearMarks } from '../../support/near-marks.ts'
import { opened } from '../../support/strokes.ts'
import { templateText } from '../../support/templates.ts'
import { jobOf } from '../../tape-up/jobs.ts'

const covers = ['whole', 'line', 'ribbon'] as const

it('generated ramps have no two marks nearer to each other than stated', () => {
  let [tiles, compared, flat, struck] = [0, 0, 0, 0]
  for (const number of [801, 804, 807])
    for (const cover of covers) {
      const set = layOut(jobOf(number).text, 'letter', cover)
      for (const group of set?.groups ?? [])
        for (const tile of group.tiles) {
          const page = set!.plan.pages.findIndex((one) => one.tile === `${tile.number}`)
          const found = nearMarks(set!.pages[page]!.draw(), tile, group)
          expect(
            found.faults.filter(({ kind }) => kind !== 'snap' && kind !== 'struck').map(({ what }) => what),
            `${number} ${cover} ${tile.number}`,
          ).toEqual([])
          // a curve that begins flatter than 10° crosses some row no steeper than that
          flat += found.faults.filter(({ kind }) => kind === 'snap').length
          // one that has no other place on a crowded page
          struck += found.faults.filter(({ kind }) => kind === 'struck').length
          tiles++
          compared += found.compared
        }
    }
  expect(tiles).toBeGreaterThan(30)
  expect(flat).toBeLessThan(tiles / 80)
  expect(struck).toBeLessThan(tiles / 60)
  expect(compared).toBeGreaterThan(20_000)
})

const set = layOut(templateText('quarter-mm'), 'a4', 'line')!
const [group] = set.groups as [TileGroup]
const tile = group.tiles.find(({ joints }) => joints.length > 0)!
const page = set.pages[set.plan.pages.findIndex((one) => one.tile === `${tile.number}`)]!

const inCell = (p: Point): boolean => convexContains(tile.cell, p, -5)

/** Faults of the page with something more on it, or told of another tile. */
const spoilt = (more: Drawing, other: Tile = tile): string =>
  nearMarks([...page.draw(), ...more], other, group)
    .faults.map(({ what }) => what)
    .join('; ')

it('a line through what is read is noticed, a scale, a cross, a sign or words; a page without has none', () => {
  const joint = tile.joints[0]!
  const middle = tile.cell.reduce((sum, p) => ({ x: sum.x + p.x / 4, y: sum.y + p.y / 4 }), { x: 0, y: 0 })
  const [from, ...ends] = [middle, joint.pair, joint.verniers[0]!, joint.crosses[0]!].map((p) =>
    affineApply(tileMap(tile), p),
  )
  const through = (to: Point): string => spoilt([stroke('mark', pathOf(from!, to), { width: 0.25 })])
  expect(through(ends[0]!)).toMatch(/mark through sign \d+–\d+/)
  expect(through(ends[1]!)).toMatch(/mark through scale to \d+/)
  expect(through(ends[2]!)).toMatch(/mark through cross to \d+/)
  expect(spoilt([])).not.toMatch(/through/)
})

it('a page that is spoilt is noticed: words on a scale, a cross, a sign, in the air of TOE', () => {
  expect(spoilt([])).toBe('')
  const joint = tile.joints[0]!
  const at = (p: { x: number; y: number }): string =>
    spoilt([text('note', affineApply(tileMap(tile), p), 2.4, 'here', { align: 'middle' })])
  // towards what the page keeps
  const [a, b] = joint.line
  const [nx, ny] = [-(b.y - a.y), b.x - a.x].map((d) => d / Math.hypot(b.x - a.x, b.y - a.y)) as [
    number,
    number,
  ]
  const inside = tile.cell.reduce((sum, p) => sum + (p.x - a.x) * nx + (p.y - a.y) * ny, 0) > 0 ? 2 : -2
  const inward = (p: { x: number; y: number }) => ({ x: p.x + inside * nx, y: p.y + inside * ny })
  expect(at(inward(joint.verniers[0]!))).toMatch(/scale to \d+ over "here"/)
  expect(at(inward(joint.crosses[0]!))).toMatch(/cross to \d+ over "here"/)
  expect(at(inward(joint.pair))).toMatch(/sign \d+–\d+ over "here"/)
  const screwed = group.pattern.screws.flatMap(({ middles }) => middles).find((p) => inCell(p))!
  expect(at(screwed)).toMatch(/"here" over screw of stud \d+/)
  const toe = group.pattern.points.find(({ name }) => name === 'TOE')!.at
  const first = group.tiles[0]!
  expect(first.number).toBe(tile.number)
  expect(at({ x: toe.x - 6, y: toe.y + 3 })).toMatch(/"here" near TOE/)
})

it('a snap line beside a line to be sawn, or beside the bottom edge, is noticed; so is none', () => {
  const { pattern } = group
  const snapAt = (y: number): Tile => ({
    ...tile,
    snap: [
      { x: tile.snap[0].x, y },
      { x: tile.snap[1].x, y },
    ],
  })
  const moved = (y: number): string => {
    const other = snapAt(y)
    const [a, b] = other.snap.map((p) => affineApply(tileMap(tile), p))
    const line = stroke('joint', pathOf(a!, b!), { width: 0.2 })
    return spoilt([line], other)
  }
  expect(moved(4)).toMatch(/snap line along the bottom edge/)
  expect(spoilt([], snapAt(33))).toMatch(/no snap line/)
  // a line to be sawn level, 6 mm above it
  const [a, b] = tile.snap.map((p) => affineApply(tileMap(tile), { x: p.x, y: p.y + 6 }))
  expect(spoilt([stroke('cut', pathOf(a!, b!), { width: 0.5 })])).toMatch(/cut line along the snap line/)
  expect(pattern.name).toBe('ramp/side')
})

it('a word that has no room beside its line is left out, and none stands under an edge that is not sawn', () => {
  let looked = 0
  for (const name of ['quarter-mm-round', 'quarter-and-flat-in'])
    for (const cover of covers) {
      const laid = layOut(templateText(name), name.endsWith('in') ? 'letter' : 'a4', cover)!
      for (const { pattern, tiles } of laid.groups)
        for (const own of tiles) {
          const index = laid.plan.pages.findIndex((one) => one.tile === `${own.number}`)
          const back = affineInvert(tileMap(own))
          const words = opened(laid.pages[index]!.draw()).words.filter(({ text: said }) =>
            /^(KEEP|WASTE)$/.test(said),
          )
          for (const { text: said, corners } of words) {
            const middle = affineApply(back, pointBetween(corners[0]!, corners[2]!, 0.5))
            expect(pathDistance(pattern.cut, middle), `${name} ${cover} ${own.number}: ${said}`).toBeLessThan(
              16,
            )
            looked++
          }
        }
    }
  expect(looked).toBeGreaterThan(60)
})

it('a joint of pieces is drawn on no page that keeps none of it', () => {
  let kept = 0
  for (const [name, from, to] of [
    ['quarter-mm', 'deck: 500 ', 'deck: 2200 '],
    ['quarter-in', 'deck: 20 ', 'deck: 90 '],
  ] as const)
    for (const paper of ['letter', 'a4'] as const)
      for (const cover of covers) {
        const laid = layOut(templateText(name).replace(from, to), paper, cover)!
        for (const { pattern, tiles } of laid.groups)
          for (const own of tiles) {
            const index = laid.plan.pages.findIndex((one) => one.tile === `${own.number}`)
            const back = affineInvert(tileMap(own))
            const drawn = opened(laid.pages[index]!.draw()).lines.filter(({ order, points }) => {
              const ends = [points[0]!, points.at(-1)!].map((p) => affineApply(back, p))
              return (
                layers[Math.floor(order / 1e6)] === 'cut' &&
                pattern.joints.some((joint) => ends.every((p) => pathDistance(pathOf(...joint), p) < 1e-6))
              )
            })
            const holds = pattern.joints.some((joint) => pathClip(pathOf(...joint), own.cell).length > 0)
            expect(drawn.length > 0, `${name} ${paper} ${cover} ${own.number}`).toBe(holds)
            if (holds) kept++
          }
      }
  expect(kept).toBeGreaterThan(5)
})
