import { describe, expect, it } from 'vitest'
import type { PaperName } from '../../../src/design/design.ts'
import type { Drawing } from '../../../src/drawing/drawing.ts'
import { type Affine, affineIdentity, affineThen } from '../../../src/geometry/affine.ts'
import { type Box, boxGrow, pathBounds } from '../../../src/geometry/bounds.ts'
import { boxCorners, convexContains, pathClip } from '../../../src/geometry/clip.ts'
import { polygonContains } from '../../../src/geometry/contains.ts'
import { pathLength } from '../../../src/geometry/length.ts'
import { pathDistance } from '../../../src/geometry/nearest.ts'
import type { Path } from '../../../src/geometry/path.ts'
import { pathMap } from '../../../src/geometry/path-map.ts'
import { pointCross, pointSubtract } from '../../../src/geometry/point.ts'
import { pathSample } from '../../../src/geometry/sample.ts'
import { type Cover, covers } from '../../../src/page/cover/cover.ts'
import { tapingSteps } from '../../../src/page/pages/taping-steps.ts'
import type { TileGroup } from '../../../src/page/set/tile-groups.ts'
import { overlaps, type Word, wordsOf } from '../../booklet/words.ts'
import { hold } from '../../support/hold.ts'
import { layOut, layOutAnew } from '../../support/lay-out.ts'
import { templates, templateText } from '../../support/templates.ts'
import { jobOf } from '../../tape-up/jobs.ts'

const strokesOf = (drawing: Drawing, map: Affine = affineIdentity): readonly Path[] =>
  drawing.flatMap((mark) => {
    if (mark.kind === 'group') return strokesOf(mark.marks, affineThen(mark.map, map))
    return mark.kind === 'stroke' ? [pathMap(mark.path, map)] : []
  })

const fillsOf = (
  drawing: Drawing,
  map: Affine = affineIdentity,
): readonly { readonly path: Path; readonly grey: number }[] =>
  drawing.flatMap((mark) => {
    if (mark.kind === 'group') return fillsOf(mark.marks, affineThen(mark.map, map))
    return mark.kind === 'fill' ? [{ path: pathMap(mark.path, map), grey: mark.grey }] : []
  })

const maps = (name: string, paper: 'letter' | 'a4') =>
  covers.flatMap((cover) => {
    const set = layOut(templateText(name), paper, cover, { strips: true })!
    const pages = set.pages.filter(({ kind }) => kind === 'map')
    const { width, height } = set.plan.paper
    const { left, right, top, bottom } = set.plan.margins
    const window: Box = { x0: left, y0: bottom, x1: width - right, y1: height - top }
    return set.groups.map((group, i) => {
      const drawing = pages[i]!.draw()
      return { what: `${group.pattern.name}, ${cover}`, group, drawing, words: wordsOf(drawing), window }
    })
  })

it('the worst that a map names is not less than the budget comes to, and less than a tenth of a millimetre more', () => {
  for (const name of templates)
    for (const { what, group, words } of maps(name, 'a4')) {
      const said = words.map(({ text }) => text).join(' ')
      const named = Number(/([\d.]+) mm at worst/.exec(said)?.[1])
      const { worst } = group.expected.lip
      expect(named, what).toBeGreaterThan(worst - 1e-5)
      expect(named, what).toBeLessThan(worst + 0.1)
    }
})

/** The tallest words that are a page's number: those of steps are smaller. */
const numberOf = (words: readonly Word[], number: number): Word =>
  words.filter(({ text }) => text === `${number}`).reduce((a, b) => (b.tall > a.tall ? b : a))

/** Capitals alone, without what letters may reach below their line. */
const capitals = ({ box, tall }: Word): Box => ({ ...box, y0: box.y1 - tall })

const namesOf = ({ tiles, datums }: TileGroup) => ({
  letters: ['TOE', 'LIP', ...datums.map(({ letter }) => letter)],
  rows: [...new Set(tiles.map(({ row }) => row))],
})

describe.each(
  templates.flatMap((name) => (['letter', 'a4'] as const).map((paper) => [name, paper] as const)),
)('the map of %s on %s', (name, paper) => {
  it('is set in three sizes, inside the margins, no word over another', () => {
    let seen = 0
    for (const { what, words, group, window } of maps(name, paper)) {
      const numbers = group.tiles.map(({ number }) => numberOf(words, number))
      const others = words.filter((word) => !numbers.includes(word))
      expect(new Set(others.map(({ tall }) => tall.toFixed(3))).size, what).toBe(2)
      for (const { text, box } of words) {
        const room = boxGrow(window, 0.1)
        const inside = box.x0 > room.x0 && box.x1 < room.x1 && box.y0 > room.y0 && box.y1 < room.y1
        hold(inside, `${what} ${text}`)
      }
      expect(overlaps(words), what).toEqual([])
      seen += words.length
    }
    expect(seen).toBeGreaterThan(150)
  })

  it('has all page numbers of one size, and no name on a line', () => {
    let seen = 0
    for (const { what, words, group, drawing } of maps(name, paper)) {
      const tall = group.tiles.map(({ number }) => numberOf(words, number).tall.toFixed(4))
      expect(new Set(tall).size, what).toBe(1)
      const lines = strokesOf(drawing)
      const names = ['TOE', 'LIP', ...group.datums.map(({ letter }) => letter)]
      const rows = group.tiles.map(({ row }) => row)
      for (const word of words) {
        if (![...names, ...rows].includes(word.text)) continue
        seen++
        const crossed = lines.some((path) => pathClip(path, boxCorners(capitals(word))).length > 0)
        hold(!crossed, `${what} ${word.text}`)
      }
    }
    expect(seen).toBeGreaterThan(15)
  })
})

it.each(templates)(
  'LIP and TOE of %s stand off the side, and a line leads from the ring of each to its name',
  (name) => {
    let seen = 0
    for (const paper of ['letter', 'a4'] as const)
      for (const { what, words, drawing } of maps(name, paper)) {
        const strokes = strokesOf(drawing)
        const rings = strokes.filter(
          (path) => path.closed && path.pieces.some(({ kind }) => kind === 'arc') && pathLength(path) < 12,
        )
        expect(rings, what).toHaveLength(2)
        const outline = strokes.reduce((a, b) => (b.closed && pathLength(b) > pathLength(a) ? b : a))
        const side = pathSample(outline, 0.5)
        for (const text of ['TOE', 'LIP']) {
          const box = capitals(words.find((word) => word.text === text)!)
          for (const corner of boxCorners(box)) hold(!polygonContains(side, corner), `${what} ${text}`)
          const leads = strokes.filter((path) => {
            const [from, to] = [path.start, path.pieces.at(-1)!.to]
            return (
              path.pieces.length === 1 &&
              rings.some((ring) => pathDistance(ring, from) < 1e-3) &&
              convexContains(boxCorners(boxGrow(box, 1.5)), to)
            )
          })
          expect(leads, `${what} ${text}`).toHaveLength(1)
          seen++
        }
      }
    expect(seen).toBeGreaterThan(10)
  },
)

it.each(templates)(
  'no page number of %s strikes the cut line, and each row begins at an arrowhead',
  (name) => {
    let seen = 0
    for (const paper of ['letter', 'a4'] as const)
      for (const { what, words, group, drawing } of maps(name, paper)) {
        const fills = fillsOf(drawing)
        expect(fills.filter(({ grey }) => grey === 1).length, what).toBe(0)
        const outline = strokesOf(drawing).reduce((a, b) =>
          b.closed && pathLength(b) > pathLength(a) ? b : a,
        )
        for (const { number } of group.tiles) {
          const box = capitals(numberOf(words, number))
          expect([what, number, pathClip(outline, boxCorners(box)).length]).toEqual([what, number, 0])
          seen++
        }
        const heads = fills.filter(({ grey }) => grey === 0)
        for (const row of new Set(group.tiles.map((tile) => tile.row))) {
          const letter = capitals(words.find(({ text }) => text === row)!)
          const near = heads.filter(({ path }) => pathClip(path, boxCorners(boxGrow(letter, 6))).length > 0)
          expect([what, row, near.length > 0]).toEqual([what, row, true])
        }
      }
    expect(seen).toBeGreaterThan(20)
  },
)

it("a row's letter stands at its arrowhead on the map of generated ramps, however crowded that is, without a line to it", () => {
  let seen = 0
  for (const number of [803, 807, 808, 810, 811, 813, 814, 815])
    for (const cover of ['line', 'ribbon'] as const) {
      const set = layOut(jobOf(number).text, 'a4', cover)!
      const drawing = set.pages.find(({ kind }) => kind === 'map')!.draw()
      const words = wordsOf(drawing)
      const heads = fillsOf(drawing).flatMap(({ path, grey }) => (grey === 0 ? [pathSample(path, 1)] : []))
      for (const row of new Set(set.groups[0]!.tiles.map((tile) => tile.row))) {
        const { x0, x1, y0, y1 } = capitals(words.find(({ text }) => text === row)!)
        const away = heads.map((points) =>
          Math.min(
            ...points.map(({ x, y }) => Math.hypot(Math.max(x0 - x, x - x1, 0), Math.max(y0 - y, y - y1, 0))),
          ),
        )
        expect(Math.min(...away), `${number} ${cover} ${row}`).toBeLessThan(4.5)
        seen++
      }
    }
  expect(seen).toBeGreaterThan(40)
})

it('where pages are small on the map no disc under a number hides more than half of its page', () => {
  let discs = 0
  for (const cover of ['line', 'ribbon'] as const) {
    const set = layOut(templateText('quarter-in').replace('deck: 20 ', 'deck: 90 '), 'letter', cover)!
    const { tiles, pattern } = set.groups[0]!
    const drawing = set.pages.find(({ kind }) => kind === 'map')!.draw()
    const outline = strokesOf(drawing).reduce((a, b) => (b.closed && pathLength(b) > pathLength(a) ? b : a))
    const scale = pathLength(outline) / pathLength(pattern.outline)
    const low = Math.min(...tiles.map(({ width, height }) => Math.min(width, height))) * scale
    for (const { path, grey } of fillsOf(drawing)) {
      if (grey !== 1) continue
      const { x0, x1 } = pathBounds(path)
      expect(x1 - x0, cover).toBeLessThan(0.7 * low)
      discs++
    }
  }
  expect(discs).toBeGreaterThan(0)
})

it('a timber whose screws lie on no page is found on one that names it', () => {
  let seen = 0
  for (const paper of ['a4', 'letter'] as const) {
    const set = layOut(templateText('quarter-mm-round'), paper, 'ribbon')!
    const said = wordsOf(set.pages.find(({ kind }) => kind === 'map')!.draw())
    const [, list] = /Where the timbers are: (.*?)\./.exec(said.map(({ text }) => text).join(' '))!
    const { screws } = set.groups[0]!.pattern
    const { tiles } = set.groups[0]!
    for (const { called, timber, middles } of screws) {
      if (middles.some((p) => tiles.some(({ window }) => convexContains(window, p)))) continue
      const pages = set.pages.flatMap((page) => {
        if (page.kind !== 'tile') return []
        const words = wordsOf(page.draw()).map(({ text }) => text)
        const [number] = words.flatMap((text) => /^page (\d+) of/.exec(text)?.[1] ?? [])
        return words.some((text) => text.startsWith(`${called} ${timber}`)) ? [number!] : []
      })
      if (pages.length === 0) continue
      seen++
      const on = list!
        .split(/, (?=page )/)
        .filter((part) => new RegExp(`${called}s? ([^a-z]*(and|to) )*${timber}\\b`).test(part))
        .map((part) => part.split(' ')[1]!)
      expect(on).toHaveLength(1)
      expect(pages).toContain(on[0])
    }
  }
  expect(seen).toBeGreaterThan(0)
})

it('the map says on which pages the screws of each timber lie, and each of them shows some of it', () => {
  let seen = 0
  let parted = 0
  for (const name of ['pair-mm', 'quarter-in', 'quarter-and-flat-in'])
    for (const { what, group, words } of maps(name, 'letter')) {
      const all = words.map(({ text }) => text).join(' ')
      const said = /Where the timbers are: (.*?)\./.exec(all)![1]!
      const pages = [...said.matchAll(/page (\d+) (.*?)(?=, page|$)/g)]
      const numbers = pages.flatMap(([, page, list]) =>
        [...list!.matchAll(/(\d+)(?: to (\d+))?/g)].flatMap(([, from, to]) =>
          Array.from({ length: Number(to ?? from) - Number(from) + 1 }, (_, i) => ({
            page: Number(page),
            timber: Number(from) + i,
          })),
        ),
      )
      const named = numbers.map(({ page, timber }) => `${page} ${timber}`)
      expect(new Set(named).size, what).toBe(named.length)
      const whole = new Set(numbers.map(({ timber }) => timber))
      // a whole plot shows all of them
      if (what.endsWith('whole')) expect(whole.size, what).toBe(group.pattern.screws.length)
      if (numbers.length > whole.size) parted++
      // each screw that is on paper lies on a page that is named
      for (const { timber, middles } of group.pattern.screws)
        for (const p of middles) {
          const on = group.tiles.filter(({ window }) => convexContains(window, p)).map(({ number }) => number)
          if (on.length === 0) continue
          const said = numbers.some((one) => one.timber === timber && on.includes(one.page))
          expect([what, timber, said]).toEqual([what, timber, true])
        }
      for (const { page, timber } of numbers) {
        const { window } = group.tiles.find(({ number }) => number === page)!
        const outline = group.pattern.markPaths[timber - 1]!
        expect([what, timber, pathClip(outline, window).length > 0]).toEqual([what, timber, true])
        seen++
      }
    }
  expect(seen).toBeGreaterThan(60)
  expect(parted).toBeGreaterThan(2)
})

it('a side of pieces is drawn with its joint, and each piece has its name in it', () => {
  let seen = 0
  for (const [name, from, to] of [
    ['quarter-mm', 'deck: 500 ', 'deck: 2200 '],
    ['quarter-in', 'deck: 20 ', 'deck: 90 '],
  ] as const)
    for (const cover of covers) {
      const set = layOut(templateText(name).replace(from, to), 'letter', cover, { strips: true })!
      const group = set.groups[0]!
      const drawing = set.pages.find(({ kind }) => kind === 'map')!.draw()
      const words = wordsOf(drawing)
      const strokes = strokesOf(drawing)
      const outline = strokes.reduce((a, b) => (b.closed && pathLength(b) > pathLength(a) ? b : a))
      const side = pathSample(outline, 0.5)
      const named = words.filter(({ text }) => /^piece [a-z]$/.test(text)).map(({ box }) => box)
      expect(named.length, cover).toBe(group.pattern.pieces)
      for (const box of named)
        for (const corner of boxCorners(box)) expect(polygonContains(side, corner)).toBe(true)
      // from edge to edge of the outline, between the two names
      const joint = strokes.filter(
        (path) =>
          !path.closed &&
          path.pieces.length === 1 &&
          [path.start, path.pieces[0]!.to].every((p) => pathDistance(outline, p) < 1e-3) &&
          pathLength(path) > 8,
      )
      expect(joint.length, cover).toBe(group.pattern.pieces - 1)
      const [a, b] = [joint[0]!.start, joint[0]!.pieces[0]!.to]
      const sides = named.map((box) =>
        boxCorners(box).map((p) => Math.sign(pointCross(pointSubtract(b, a), pointSubtract(p, a)))),
      )
      expect(new Set(sides[0])).not.toEqual(new Set(sides[1]))
      for (const one of sides) expect(new Set(one).size).toBe(1)
      seen++
    }
  expect(seen).toBe(6)
})

it('a single page is not trimmed; pages that join none before them are told where they lie, and places without a page', () => {
  const steps = (name: string, paper: PaperName, cover: Cover): string => {
    const set = layOut(templateText(name), paper, cover)!
    const { pattern, tiles, datums } = set.groups[0]!
    return tapingSteps({ units: 'mm', cover, pattern, tiles, datums, trial: true, strips: false })[3]!
  }
  expect(steps('quarter-mm', 'a0', 'line')).toBe(
    'One page, nothing to trim: lay page 1 by its snap line. Use the paper the same day: damp paper grows.',
  )
  const one = layOut(templateText('quarter-mm'), 'a0', 'line')!.groups[0]!
  const all = tapingSteps({
    units: 'mm',
    cover: 'line',
    pattern: one.pattern,
    tiles: one.tiles,
    datums: one.datums,
    trial: true,
    strips: false,
  }).join(' ')
  expect(all).toContain('Chalk the snap line above')
  expect(all).toContain('Lay the page on the panel')
  expect(all).toContain('lay the page again;')
  expect(all).not.toMatch(/taped sheet|snap lines|lay the pages/)
  expect(steps('quarter-mm', 'a4', 'line')).not.toMatch(/joins? no|open/)
  const set = layOut(templateText('pair-mm'), 'a4', 'whole')!
  const { tiles } = set.groups[0]!
  const [alone] = tiles.filter(({ joints }, i) => i > 0 && !joints.some(({ over }) => over))
  const along = alone!.snap[0].x - tiles[0]!.snap[0].x
  expect(steps('pair-mm', 'a4', 'whole')).toContain(
    `Page ${alone!.number} joins no page before it: set it on its snap line, its left arrowhead ${Math.round(along)} mm beyond page 1's. Where nothing is traced no page is printed: such places stay open.`,
  )
})

it('the page that is called at the toe shows it, however tall the ramp is', () => {
  let between = 0
  for (const deck of [66, 72, 78, 84])
    for (const surface of [84, 96, 108]) {
      const text = `units: in
title: Tall
ramps:
  - kind: quarter
    width: 8 ft
    height: { deck: ${deck} }
    transition: { circle: { surface: ${surface} } }
    toe: 1 1/2
    deck: 36
    sides: { thickness: 23/32, count: 4 }
    skin: [3/8 plywood, 3/8 plywood, 1/4 hardboard]
    deck-board: 3/4 plywood
    coping: { outside: 2 3/8 }
`
      const found = layOutAnew(text, 'letter', 'ribbon')?.groups[0]
      if (!found) continue
      const { pattern, tiles, datums } = found
      const facts = {
        units: 'in',
        cover: 'ribbon',
        pattern,
        tiles,
        datums,
        trial: true,
        strips: false,
      } as const
      const [taping, laying] = tapingSteps(facts).slice(3) as [string, string]
      const elsewhere = /Start with page 1 in row A \(the toe is on page (\d+)\)/.exec(taping)?.[1]
      const called = elsewhere ?? /Start with page (\d+) at the toe/.exec(taping)![1]
      const toe = pattern.points.find(({ name }) => name === 'TOE')!.at
      const what = `deck ${deck}, radius ${surface}: page ${called}`
      hold(convexContains(tiles.find(({ number }) => `${number}` === called)!.window, toe), what)
      expect(laying, what).toContain(`again from ${elsewhere === undefined ? 'the toe' : 'page 1'};`)
      if (elsewhere !== undefined) between++
    }
  expect(between).toBeGreaterThan(0)
})

it('a ramp without skin hears of no skin, one without a pipe of no pipe', () => {
  const said = (skin: string, coping: string) => {
    const text = `title: Low one
units: mm
ramps:
  - width: 1216
    height: { deck: 640 }
    transition: { circle: { surface: 1700 } }
    toe: 40
    deck: 500
    skin: ${skin}
    run-out: none
    coping: ${coping}
`
    const set = layOut(text, 'a4', 'line', { strips: true })!
    return set.pages.flatMap(({ kind, draw }) =>
      kind === 'map' || kind === 'trial'
        ? [
            wordsOf(draw())
              .map(({ text }) => text)
              .join(' '),
          ]
        : [],
    )
  }
  const [map, trial] = said('[9 plywood, 9 plywood, 6 hardboard]', '{ outside: 60.3, up: 8, out: 6 }')
  expect(map).toContain('mark the skin')
  expect(map).toContain('Heating or welding zinc-coated pipe gives off toxic fume.')
  expect(trial).toContain('screw on offcuts of skin')
  const [bareMap, bareTrial] = said('[]', '{ outside: 60.3, up: 8, out: 6 }')
  for (const words of [bareMap, bareTrial]) expect(words).not.toMatch(/skin/)
  expect(bareTrial).toMatch(/anywhere near\), (screw on offcuts of deck board, )?lay the real pipe in/)
  const [pipeless, none] = said('[9 plywood, 9 plywood, 6 hardboard]', 'none')
  expect(none).toBeUndefined()
  expect(pipeless).toContain('nobody stands under it.')
  expect(pipeless).not.toMatch(/pipe/i)
})

it('turned rows are struck parallel to the first: that of one more, those of several', () => {
  const { pattern, tiles, datums } = layOut(templateText('quarter-mm'), 'a4', 'ribbon')!.groups[0]!
  const facts = { units: 'mm', cover: 'ribbon', pattern, datums, trial: true, strips: false } as const
  const [from, to] = tiles[0]!.snap
  const long = Math.hypot(to.x - from.x, to.y - from.y)
  // as far below the line of the first row as said, square to it
  const lower = (row: string, by: number): TileGroup['tiles'][number] => ({
    ...tiles[0]!,
    row,
    snap: [from, to].map(({ x, y }) => ({
      x: x + ((to.y - from.y) / long) * by,
      y: y - ((to.x - from.x) / long) * by,
    })) as unknown as readonly [typeof from, typeof to],
  })
  const placing = (...rows: readonly TileGroup['tiles'][number][]) =>
    tapingSteps({ ...facts, tiles: [...tiles, ...rows] })[2]!
  expect(placing(lower('X', 108))).toContain(', and parallel to it that of row X 108 mm below.')
  expect(placing(lower('X', 108), lower('Y', 216))).toContain(
    ', and parallel to it those of row X 108 mm below and row Y 216 mm below.',
  )
})

it('a joint that no page carries whole is struck from the front edge: one figure where it stands plumb, one for each end where it leans', () => {
  const long = templateText('quarter-mm').replace('    deck: 500 ', '    deck: 2200 ')
  const { pattern, tiles, datums } = layOut(long, 'a4', 'ribbon')!.groups[0]!
  const told = (by: number, lower = 0): string => {
    const joints = pattern.joints.map(([top, foot]) => [{ x: top.x - by, y: top.y - lower }, foot] as const)
    const facts = { units: 'mm', cover: 'ribbon', tiles, datums, trial: true, strips: false } as const
    return tapingSteps({ ...facts, pattern: { ...pattern, joints } })[4]!
  }
  const [[top, foot]] = pattern.joints as [(typeof pattern.joints)[number]]
  expect(top.x).toBe(foot.x)
  const mm = Math.round(foot.x)
  const strike = 'No page carries its joint whole; strike it, back from the front edge'
  expect(told(0)).toContain(`${strike} ${mm} mm at the bottom edge and at the top line, and saw`)
  expect(told(30)).toContain(`${strike} ${mm} at the bottom edge to ${mm - 30} mm at the top line, and saw`)
  expect(told(30, 5)).toContain('mm at the curve, and saw')
})

it('on a piece without a front edge the tape lies by its joint, so that all that is told from that edge is read as it stands', () => {
  const long = templateText('quarter-mm').replace('    deck: 500 ', '    deck: 2200 ')
  for (const cover of covers) {
    const { pattern, tiles, datums } = layOut(long, 'a4', cover)!.groups[0]!
    const facts = { units: 'mm', cover, tiles, datums, trial: true, strips: false } as const
    const told = (joints: typeof pattern.joints): string =>
      tapingSteps({ ...facts, pattern: { ...pattern, joints } })[4]!
    const [[top, foot]] = pattern.joints as [(typeof pattern.joints)[number]]
    const mm = Math.round(foot.x)
    expect(told(pattern.joints), cover).toContain(`reads there ${mm} mm: it then shows`)
    // this one leans: the tape lies at its foot
    const more = [
      { ...top, x: top.x + 350 },
      { ...foot, x: foot.x + 400 },
    ] as const
    expect(told([...pattern.joints, more])).toContain(`reads there ${mm} mm on b and ${mm + 400} mm on c: it`)
  }
})

it('the largest paper takes what fits on it on one sheet, without a joint, however it is covered', () => {
  let [whole, lines] = [0, 0]
  for (const name of ['quarter-mm', 'pair-mm', 'quarter-in'])
    for (const cover of covers)
      for (const { pattern, tiles } of layOut(templateText(name), 'a0', cover)!.groups) {
        // a sheet of 841 × 1189 mm less margins of 10 mm and half the overlap, 6 mm, all round
        const [long, short] = [1189 - 32, 841 - 32]
        const fits = pattern.length < long && pattern.height < short
        if (cover === 'whole' && !fits) continue
        expect([pattern.name, cover, tiles.length, tiles.flatMap(({ joints }) => joints).length]).toEqual([
          pattern.name,
          cover,
          1,
          0,
        ])
        if (cover === 'whole') whole++
        else lines++
      }
  expect(whole).toBeGreaterThan(0)
  expect(lines).toBeGreaterThan(6)
})

it('names on the map of a generated ramp keep off its head and each other', () => {
  let seen = 0
  for (const number of [801, 804, 7, 8])
    for (const cover of covers) {
      const set = layOut(jobOf(number).text, 'letter', cover)
      const map = set?.pages.find(({ kind }) => kind === 'map')
      if (!map) continue
      const words = wordsOf(map.draw())
      expect(overlaps(words), `${number}, ${cover}`).toEqual([])
      // the head is the title and what stands under it; names of the drawing lie below
      const head = words.filter(({ text }) =>
        /Pages \d+ to \d+ on|^Lengths in|Cover (whole|line|ribbon);/.test(text),
      )
      const foot = Math.min(...head.map(({ box }) => box.y0))
      const { letters, rows } = namesOf(set!.groups[0]!)
      for (const { text, box } of words)
        if ([...letters, ...rows].includes(text)) {
          expect(box.y1, `${text} of ${number}, ${cover}`).toBeLessThan(foot)
          seen++
        }
    }
  expect(seen).toBeGreaterThan(40)
})

it.each(templates)("whole of %s leaves out pages that hold nothing but the panel's own edge", (name) => {
  for (const paper of ['letter', 'a4'] as const) {
    const set = layOut(templateText(name), paper, 'whole', { strips: true })!
    for (const { pattern, tiles } of set.groups)
      for (const tile of tiles) {
        const holds =
          pathClip(pattern.cut, tile.window).length > 0 ||
          pattern.markPaths.some((path) => pathClip(path, tile.window).length > 0)
        expect([paper, tile.number, holds]).toEqual([paper, tile.number, true])
      }
  }
})

it.each(covers)(
  'the map of cover %s says what to do where a distance is off, and that the cross decides',
  (cover) => {
    const set = layOut(templateText('quarter-mm'), 'a4', cover, { strips: true })!
    const said = set.groups.map(({ datums }, i) => {
      const words = wordsOf(set.pages.filter(({ kind }) => kind === 'map')[i]!.draw())
        .map(({ text }) => text)
        .join(' ')
      expect(words).toContain('off by more than its ±, lay the pages again from the toe')
      expect(words.includes('cross decides')).toBe(datums.length > 0)
      expect(words.includes('Set out the crosses')).toBe(datums.length > 0)
      return datums.length
    })
    expect(Math.max(...said)).toBeGreaterThan(0)
  },
)

describe('a map of many rows', () => {
  const steep = `units: in
title: Steep
ramps:
  - kind: quarter
    width: 10 ft
    height: { surface: 71 }
    transition: { circle: { surface: 96 } }
    toe: 2
    deck: 4 ft
    sides: { thickness: 23/32, count: 6 }
    studs: { section: 1 1/2 x 5 1/2, every: 6, foot: { every: 4, to: 30 } }
    skin: [1/8 plywood, 1/8 plywood, 1/8 plywood, 1/8 plywood, 1/8 plywood, 1/8 plywood, 1/8 plywood, 1/4 hardboard]
    fasten: between
    run-out: { step-back: 1/4 }
    deck-board: 3/4 plywood
    coping: { outside: 2 3/8, notch: { along: 1 7/8, down: 1 1/4 } }
    chamfer: { leg: 10 }
    wheels: { diameter: 3, height: 4 }
`
  const many = layOutAnew(steep, 'letter', 'ribbon')!
  const pages = many.pages.filter(({ kind }) => kind === 'map')
  const [group] = many.groups
  const rows = new Set(group!.tiles.map(({ row }) => row)).size

  it('keeps 10 mm of its drawing for each row; its tables have a second page behind the first', () => {
    expect(rows).toBeGreaterThan(8)
    expect(pages.map(({ label }) => label)).toEqual(['Map', 'Map 2'])
    expect(many.pages.slice(0, 2)).toEqual(pages)
    const [first, second] = pages.map(({ draw }) => wordsOf(draw()))
    const outline = strokesOf(pages[0]!.draw()).reduce((a, b) =>
      b.closed && pathLength(b) > pathLength(a) ? b : a,
    )
    const { y0, y1 } = pathBounds(outline)
    // names above and below it take the rest
    expect(y1 - y0).toBeGreaterThan(Math.min(116, 10 * rows) - 20)
    const joined = (words: readonly Word[]): string => words.map(({ text }) => text).join(' ')
    expect(joined(first!)).toContain("tables on the map's second page")
    expect(joined(second!)).toContain(`set ${many.code}`)
    for (const words of [first!, second!]) expect(overlaps(words)).toEqual([])
    // either page tells its own part, together all of it
    const told = [/Print at 100 %/, /Check with a tape/, /Panel: /, /mm at worst/, /Saws, routers/]
    expect(told.map((form) => [first!, second!].map((words) => form.test(joined(words))))).toEqual([
      [true, false],
      [false, true],
      [false, true],
      [false, true],
      [true, false],
    ])
    for (const { letter } of group!.datums) expect(second!.map(({ text }) => text)).toContain(letter)
  })

  it('has its numbers apart, by a figure at least', () => {
    const words = wordsOf(pages[0]!.draw())
    const numbers = group!.tiles.map(({ number }) => numberOf(words, number))
    for (const [i, one] of numbers.entries())
      for (const other of numbers.slice(i + 1)) {
        const [a, b] = [boxGrow(capitals(one), 0.3), capitals(other)]
        hold(a.x1 < b.x0 || b.x1 < a.x0 || a.y1 < b.y0 || b.y1 < a.y0, `${one.text} and ${other.text}`)
      }
  })

  it('is on one page where the drawing has room', () => {
    for (const name of templates)
      for (const cover of covers) {
        const set = layOut(templateText(name), 'a4', cover)!
        expect(set.pages.filter(({ kind }) => kind === 'map').length).toBe(set.groups.length)
      }
  })
})
