import { describe, expect, it } from 'vitest'
import { affineApply, affineInvert } from '../../../src/geometry/affine.ts'
import { pathClip } from '../../../src/geometry/clip.ts'
import { pathLength } from '../../../src/geometry/length.ts'
import { pathDistance } from '../../../src/geometry/nearest.ts'
import { pathOf } from '../../../src/geometry/path.ts'
import { pointBetween, pointDistance } from '../../../src/geometry/point.ts'
import { covers } from '../../../src/page/cover/cover.ts'
import { tileMap } from '../../../src/page/tile/tile.ts'
import { above, atMost, below } from '../../support/hold.ts'
import { layOut } from '../../support/lay-out.ts'
import { opened } from '../../support/strokes.ts'
import { templates, templateText } from '../../support/templates.ts'

/** The tiles of a template's sets, each with what it says and draws. */
const tilesOf = (name: string) =>
  (['letter', 'a4'] as const).flatMap((paper) =>
    covers.flatMap((cover) => {
      const set = layOut(templateText(name), paper, cover)!
      return set.groups.flatMap(({ pattern, tiles }) =>
        tiles.map((tile) => {
          const page = set.plan.pages.findIndex((one) => one.tile === `${tile.number}`)
          return {
            what: `${paper} ${cover} ${tile.number}`,
            pattern,
            tile,
            ...opened(set.pages[page]!.draw()),
          }
        }),
      )
    }),
  )

/** Floors with drill words on their page, over all templates. */
const beside = { told: 0 }

describe.each(templates)('on the tiles of %s', (name) => {
  const all = tilesOf(name)

  it('edges have their names beside them: the bottom edge on each page that shows it, floor and back wall of the notch', () => {
    let [shown, named, notches, walls] = [0, 0, 0, 0]
    for (const { what, pattern, tile, words } of all) {
      const back = affineInvert(tileMap(tile))
      for (const { words: called, from, to } of pattern.edgeNames) {
        const edge = pathOf(from, to)
        const own = words.filter(({ text }) => text === called)
        atMost(own.length, 1, `${what} ${called}`)
        for (const { corners } of own) {
          const middle = affineApply(back, pointBetween(corners[0]!, corners[2]!, 0.5))
          below(pathDistance(edge, middle), 9, `${what} ${called}`)
        }
        const seen = pathClip(edge, tile.cell).reduce((sum, path) => sum + pathLength(path), 0)
        if (called.startsWith('panel') && seen > 80) {
          shown++
          named += own.length
        }
        if ((called === 'floor' || called === 'back wall') && seen > pointDistance(from, to) - 0.01) {
          notches++
          walls += own.length
        }
      }
    }
    expect(shown).toBeGreaterThan(10)
    expect(named / shown).toBeGreaterThan(0.9)
    expect(walls).toBeGreaterThanOrEqual(0.75 * notches)
  })

  it('rulers count from zero on, and no tick and no snap line lies in the air of LIP and TOE', () => {
    let [figures, rings] = [0, 0]
    for (const { what, pattern, tile, words, lines } of all) {
      for (const { text } of words.filter(({ text: said }) => /^[-–−]?\d+( \d+\/\d+)?$/.test(said))) {
        expect(text, what).toMatch(/^\d/)
        figures++
      }
      for (const { at } of pattern.points) {
        const p = affineApply(tileMap(tile), at)
        rings++
        for (const { points, grey, width } of lines)
          if (grey === 0.4 && width === 0.15)
            above(Math.min(...points.map((q) => pointDistance(p, q))), 6.5, what)
      }
    }
    expect(figures).toBeGreaterThan(100)
    expect(rings).toBeGreaterThan(40)
  })

  it('a page that begins a row names its snap line, and every long tick of a ruler has its figure', () => {
    let [begun, long, short] = [0, 0, 0]
    for (const { what, tile, words, lines } of all) {
      const named = words.filter(({ text }) => text.startsWith(`snap line ${tile.row}`))
      if (!tile.joints.some(({ edge }) => edge === 'left')) {
        begun++
        expect(named.length, what).toBe(1)
      }
      const figures = words.filter(({ text }) => /^\d+( \d+\/\d+)?$/.test(text))
      for (const { points, grey, width } of lines) {
        if (grey !== 0.4 || width !== 0.15) continue
        if (pointDistance(points[0]!, points.at(-1)!) < 3) {
          short++
          continue
        }
        long++
        const nearest = Math.min(
          ...figures.map(({ corners }) =>
            Math.min(...corners.slice(0, 2).map((p) => pointDistance(p, points.at(-1)!))),
          ),
        )
        below(nearest, 4, what)
      }
    }
    expect(begun).toBeGreaterThan(10)
    expect(long).toBeGreaterThan(30)
    expect(short).toBeGreaterThan(100)
  })

  it('a name that runs along words of the notch stands well away from them', () => {
    for (const { what, words } of all) {
      const floors = words.filter(({ text }) => text === 'floor')
      for (const drill of words.filter(({ text }) => /^drill .* first$/.test(text)))
        for (const floor of floors) {
          beside.told++
          const apart = floor.corners.flatMap((p) =>
            drill.corners.map((a, i) => pathDistance(pathOf(a, drill.corners[(i + 1) % 4]!), p)),
          )
          above(Math.min(...apart), 7.9, what)
        }
    }
  })
})

it('floor and drill words stand on one page somewhere', () => {
  expect(beside.told).toBeGreaterThan(2)
})

it('snap lines keep off the rings of LIP and TOE where their row has room', () => {
  let [near, looked] = [0, 0]
  for (const name of templates)
    for (const paper of ['letter', 'a4'] as const)
      for (const cover of covers)
        for (const { pattern, tiles } of layOut(templateText(name), paper, cover)!.groups)
          for (const tile of tiles)
            for (const { at } of pattern.points) {
              if (pathClip(pathOf(at, { x: at.x + 0.01, y: at.y }), tile.cell).length === 0) continue
              looked++
              if (pathDistance(pathOf(...tile.snap), at) < 8) near++
            }
  expect(looked).toBeGreaterThan(60)
  expect(near).toBeLessThan(looked / 20)
})
