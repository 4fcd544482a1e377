import { expect, it } from 'vitest'
import { readDesign } from '../../../src/design/read.ts'
import { affineApply, affineInvert } from '../../../src/geometry/affine.ts'
import { boxGrow, boxOverlaps, pointsBounds } from '../../../src/geometry/bounds.ts'
import { pointBetween, pointDistance } from '../../../src/geometry/point.ts'
import { usualLaying } from '../../../src/job/laying.ts'
import { plotJob } from '../../../src/job/plot.ts'
import { isRefusal } from '../../../src/job/refusal.ts'
import { tileMap } from '../../../src/page/tile/tile.ts'
import { pens } from '../../../src/pattern/pens.ts'
import { wordsOf } from '../../booklet/words.ts'
import { fingerprint, layOut } from '../../support/lay-out.ts'
import type { Pt } from '../../support/pt.ts'
import { opened } from '../../support/strokes.ts'
import { templates, templateText } from '../../support/templates.ts'

it('every page says its number, its set and what to do with it, however little of it is kept', () => {
  const tall = `title: Tall ramp for the boathouse
units: in
ramps:
  - width: 36 11/16
    height: { deck: 38 9/16 }
    transition: { circle: { surface: 93 } }
    toe: 1 11/16
    deck: 12 1/2
    skin: [3/8 plywood, 3/8 plywood]
    run-out: { sheet: 1/16 steel }
`
  const tiny = `title: tiny
units: mm
ramps:
  - width: 600
    height: { deck: 250 }
    transition: { circle: { surface: 900 } }
    toe: 25
    deck: 200
    studs: { section: 38 x 38, every: 150 }
    skin: [4 plywood, 4 plywood, 3 hardboard]
    run-out: { step-back: 15 }
    deck-board: 9 plywood
    coping: { outside: 33.7, up: 4, out: 4 }
`
  const wide = 53.7
  let narrow = 0
  for (const { text, margins, overlap, cover } of [
    {
      text: tall,
      margins: { top: wide, right: wide, bottom: wide, left: wide },
      overlap: 30,
      cover: 'whole',
    },
    { text: tiny, margins: { top: 30, right: 40, bottom: 10, left: 50 }, overlap: 60, cover: 'line' },
  ] as const) {
    const read = readDesign(text)
    if ('problems' in read) throw new Error('no design')
    const { sheet, ...usual } = usualLaying('letter')
    const job = plotJob(
      read.design,
      text,
      { ...usual, sheet: { ...sheet, margins }, overlap, cover, strips: false, pack: true },
      fingerprint,
    )
    if (isRefusal(job)) throw new Error('it is not laid out')
    const { set } = job
    for (const [i, { kind, draw }] of set.pages.entries()) {
      if (kind !== 'tile') continue
      const { tile } = set.plan.pages[i]!
      const drawing = draw()
      const words = wordsOf(drawing)
      const largest = words.reduce((a, b) => (b.tall > a.tall ? b : a))
      expect([margins, tile, largest.text]).toEqual([margins, tile, tile])
      const said = words.map((word) => word.text).join('\n')
      expect(said).toContain(`set ${set.code}`)
      expect(said).toMatch(/start here|lay it over page|(starts|goes on in) row/)
      if (words.some((word) => /^lay it over page/.test(word.text) && word.tall < 2.5)) narrow++
      // a page that is held wide is drawn upright: letters are tall across it
      const lines = opened(drawing)
        .words.filter(({ text }) => blockLine.test(text))
        .map(({ text, corners }) => ({ text, box: pointsBounds(corners) }))
      for (const [k, one] of lines.entries()) {
        const inner = boxGrow(one.box, -0.3)
        for (const other of lines.slice(k + 1))
          if (boxOverlaps(inner, other.box)) expect.fail(`${tile}: “${one.text}” and “${other.text}”`)
      }
    }
  }
  expect(narrow).toBeGreaterThan(0)
})

/** What stands level on a page: lines of its block, the snap line's name, the figures of a cross. */
const blockLine =
  /^(hold the page|trim the|lay it over|page \d|OUTSIDE|scales:|side of|snap line|cross|\d.* from)/

it('where much of a page hangs below the panel its number lies on that, and says what an X is on and how scales are read', () => {
  let [hung, scaled, crossed] = [0, 0, 0]
  for (const paper of ['a3', 'a4'] as const) {
    const set = layOut(templateText('quarter-mm'), paper, 'whole')!
    for (const { tiles, pattern } of set.groups)
      for (const tile of tiles) {
        const page = set.plan.pages.findIndex((one) => one.tile === `${tile.number}`)
        const { words } = opened(set.pages[page]!.draw())
        const said = words.map(({ text }) => text)
        if (said.includes('scales: the longest tick meets 0')) scaled++
        if (said.some((one) => /^X on (stud|timber)s? \d/.test(one))) crossed++
        const number = words.reduce((a, b) => (b.size > a.size ? b : a))
        const back = affineInvert(tileMap(tile))
        const low = Math.min(...tile.window.map(({ y }) => y))
        const high = Math.max(...tile.window.map(({ y }) => y))
        if (low > -80 || high < 100 || high > pattern.height) continue
        const where = `${paper} ${tile.number}`
        // a page of A4 has less room beside the panel
        if (paper === 'a3')
          for (const p of number.corners) expect(affineApply(back, p).y, where).toBeGreaterThan(-5)
        hung++
      }
  }
  expect(hung).toBeGreaterThan(0)
  expect(scaled).toBeGreaterThan(8)
  expect(crossed).toBeGreaterThan(8)
})

const middleOf = (line: readonly Pt[]): Pt => pointBetween(line[0]!, line[1]!, 0.5)

/** 0 where one line is square to the other. */
const squareness = ([a, b]: readonly Pt[], [c, d]: readonly Pt[]): number =>
  ((b!.x - a!.x) * (d!.x - c!.x) + (b!.y - a!.y) * (d!.y - c!.y)) /
  (pointDistance(a!, b!) * pointDistance(c!, d!))

it('says X of as many timbers as have one on that page', () => {
  let [signs, without] = [0, 0]
  for (const name of templates)
    for (const cover of ['whole', 'line', 'ribbon'] as const) {
      const set = layOut(templateText(name), 'letter', cover)!
      for (const { tiles } of set.groups)
        for (const tile of tiles) {
          const page = set.plan.pages.findIndex((one) => one.tile === `${tile.number}`)
          const { words, lines } = opened(set.pages[page]!.draw())
          const strokes = lines.filter(
            ({ points, width }) =>
              width === pens.mark.width && points.length === 2 && pointDistance(points[0]!, points[1]!) > 5.9,
          )
          // a cross to drill at stands square
          const isX = (one: readonly Pt[], other: readonly Pt[]): boolean =>
            pointDistance(middleOf(one), middleOf(other)) < 0.01 && Math.abs(squareness(one, other)) > 0.01
          const drawn = strokes.filter(({ points }, i) =>
            strokes.slice(0, i).some((other) => isX(points, other.points)),
          )
          const said = words.find(({ text }) => /^X on (stud|timber)/.test(text))?.text ?? ''
          const named = [...said.matchAll(/(\d+)(?: to (\d+))?/g)].reduce(
            (sum, [, from, to = from]) => sum + Number(to) - Number(from) + 1,
            0,
          )
          expect(named, `${name} ${cover} ${tile.number}: ${said}`).toBe(drawn.length)
          signs += drawn.length
          if (said === '') without++
        }
    }
  expect(signs).toBeGreaterThan(200)
  expect(without).toBeGreaterThan(0)
})
