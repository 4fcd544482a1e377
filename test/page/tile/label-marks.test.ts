import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { PaperName } from '../../../src/design/design.ts'
import type { Drawing, Mark } from '../../../src/drawing/drawing.ts'
import { textCorners } from '../../../src/drawing/text-box.ts'
import { type Affine, affineApply, affineIdentity, affineThen } from '../../../src/geometry/affine.ts'
import { type Box, boxOverlaps, pointsBounds } from '../../../src/geometry/bounds.ts'
import { convexContains } from '../../../src/geometry/clip.ts'
import { pathSample } from '../../../src/geometry/sample.ts'
import type { Cover } from '../../../src/page/cover/cover.ts'
import { above, hold } from '../../support/hold.ts'
import { layOut } from '../../support/lay-out.ts'
import { nearMarks } from '../../support/near-marks.ts'
import type { Pt } from '../../support/pt.ts'
import { opened } from '../../support/strokes.ts'
import { templates, templateText } from '../../support/templates.ts'

interface Said {
  readonly mark: Extract<Mark, { kind: 'text' }>
  readonly corners: readonly Pt[]
  readonly box: Box
}

interface Line {
  readonly layer: string
  readonly width: number
  readonly points: readonly Pt[]
  readonly box: Box
}

/** Words with the corners of their boxes, and strokes as points, on the page. */
const onPage = (drawing: Drawing) => {
  const said: Said[] = []
  const lines: Line[] = []
  const walk = (marks: Drawing, map: Affine): void => {
    for (const mark of marks)
      if (mark.kind === 'group') walk(mark.marks, affineThen(mark.map, map))
      else if (mark.kind === 'text') {
        const corners = textCorners(mark, map)
        said.push({ mark, corners, box: pointsBounds(corners) })
      } else if (mark.kind === 'stroke' && isKept(mark)) {
        const points = pathSample(mark.path, 0.3).map((p) => affineApply(map, p))
        lines.push({ layer: mark.layer, width: mark.pen.width, points, box: pointsBounds(points) })
      }
  }
  walk(drawing, affineIdentity)
  return { said, lines }
}

/** What words keep off: the cut line, marks and scales of joints, snap lines, crosses. */
const isKept = ({ layer, pen }: Extract<Mark, { kind: 'stroke' }>): boolean =>
  layer === 'cut' || layer === 'joint' || (layer === 'datum' && pen.width < 0.2)

/** The pages of a set, each drawn once for all that is asked of it. */
const drawnSet = (name: string, paper: PaperName, cover: Cover) => {
  const set = layOut(templateText(name), paper, cover)!
  return {
    paper,
    cover,
    groups: set.groups,
    pages: set.pages.map(({ kind, label, draw }, i) => {
      const drawing = draw()
      return { kind, label, page: set.plan.pages[i]!, drawing, ...onPage(drawing) }
    }),
  }
}

/** Between the baseline and the top of a capital, a little less on all sides. */
const inBox = ([a, b, , d]: readonly Pt[], p: Pt): boolean => {
  const [wide, high] = [Math.hypot(b!.x - a!.x, b!.y - a!.y), Math.hypot(d!.x - a!.x, d!.y - a!.y)]
  const u = ((p.x - a!.x) * (b!.x - a!.x) + (p.y - a!.y) * (b!.y - a!.y)) / wide
  const v = ((p.x - a!.x) * (d!.x - a!.x) + (p.y - a!.y) * (d!.y - a!.y)) / high
  return u > 0.15 && u < wide - 0.15 && v > (high * 0.3) / 1.3 + 0.15 && v < high - 0.15
}

const overBox = ([a, b, , d]: readonly Pt[]): readonly Pt[] =>
  Array.from({ length: 41 }, (_, i) => i / 40).flatMap((u) =>
    [0.25, 0.5, 0.75, 1].map((v) => ({
      x: a!.x + u * (b!.x - a!.x) + v * (d!.x - a!.x),
      y: a!.y + u * (b!.y - a!.y) + v * (d!.y - a!.y),
    })),
  )

describe.each(templates)('on the pages of %s', (name) => {
  let sets: readonly ReturnType<typeof drawnSet>[] = []
  beforeAll(() => {
    sets = (['whole', 'line', 'ribbon'] as const).flatMap((cover) =>
      (['letter', 'a4'] as const).map((paper) => drawnSet(name, paper, cover)),
    )
  })
  afterAll(() => {
    sets = []
  })

  it.each(['whole', 'line', 'ribbon'] as const)(
    'no words cover other words, a mark or scale of a joint, a snap line, a cross or the cut line: %s',
    (cover) => {
      let compared = 0
      const covered: string[] = []
      for (const { paper, pages } of sets.filter((set) => set.cover === cover))
        for (const { label, said, lines } of pages.filter(({ kind }) => kind === 'tile'))
          said.forEach(({ mark, corners, box }, i) => {
            const what = `${paper} ${label}: ${mark.text}`
            compared += lines.length + said.length - i - 1
            for (const line of lines)
              if (boxOverlaps(box, line.box) && line.points.some((p) => inBox(corners, p)))
                covered.push(`${what} on ${line.layer}`)
            for (const other of said.slice(i + 1))
              if (
                boxOverlaps(box, other.box) &&
                (overBox(other.corners).some((p) => inBox(corners, p)) ||
                  overBox(corners).some((p) => inBox(other.corners, p)))
              )
                covered.push(`${what} on ${other.mark.text}`)
          })
      expect(covered).toEqual([])
      expect(compared).toBeGreaterThan(10_000)
    },
  )

  it('no two marks lie nearer to each other than stated: scales, crosses, signs, words, boxes, points, snap and cut lines', () => {
    let compared = 0
    const seen: Record<string, number> = {}
    for (const { paper, cover, groups, pages } of sets)
      for (const group of groups)
        for (const tile of group.tiles) {
          const { drawing } = pages.find(({ page }) => page.tile === `${tile.number}`)!
          const found = nearMarks(drawing, tile, group)
          expect(
            found.faults.map(({ what }) => what),
            `${paper} ${cover} ${tile.number}`,
          ).toEqual([])
          compared += found.compared
          for (const [kind, count] of Object.entries(found.kinds)) seen[kind] = (seen[kind] ?? 0) + count
        }
    expect(compared).toBeGreaterThan(20_000)
    // most names stand on their timbers, without a box
    const { box, ...others } = seen
    expect(Math.min(...Object.values(others)), JSON.stringify(seen)).toBeGreaterThan(40)
    expect(box).toBeGreaterThan(0)
  })

  it('timbers are named whole, within what a page keeps, on some page that shows them', () => {
    let named = 0
    for (const { paper, cover, groups, pages } of sets)
      for (const { tiles, pattern } of groups) {
        const words = new Set<string>()
        for (const { page, said } of pages) {
          const tile = tiles.find((one) => `${one.number}` === page.tile)
          if (!tile) continue
          for (const { mark, corners } of said.filter(({ mark }) => /^(stud|timber) \d/.test(mark.text))) {
            for (const { x, y } of corners)
              hold(
                convexContains(
                  tile.cell,
                  affineApply(page.toPattern!, { x: (x * 72) / 25.4, y: (y * 72) / 25.4 }),
                ),
                mark.text,
              )
            words.add(mark.text)
            named++
          }
        }
        // a good part of its outline on one page, 80 mm off its edges: less leaves no room for a box beside it
        const outlines = pattern.markPaths.map((path) => pathSample(path, 1))
        // pages of the whole side show each of them
        const seen = pattern.labels.filter(
          (_, i) =>
            cover === 'whole' ||
            tiles.some((tile) => outlines[i]!.filter((p) => convexContains(tile.cell, p, -8)).length > 80),
        )
        for (const { words: usual, shorter } of seen)
          hold(words.has(usual) || words.has(shorter), `${paper} ${cover}: ${usual}`)
      }
    expect(named).toBeGreaterThan(20)
  })
})

it('a line to the name of a timber begins in the window', () => {
  const text = `title: Ribbed ramp for the boathouse
units: mm
ramps:
  - width: 2291.2
    height: { surface: 479.2 }
    transition: { circle: { frame: 934 }, tangent: { surface: -3.4 } }
    toe: 23.7
    deck: 584.4
    sides: { thickness: 18, count: 4 }
    studs: { section: 45 x 89, every: 256.5 }
    skin: [9.5 plywood, 6.5 plywood, 12 plywood, 12 plywood]
    deck-board: 10.1 plywood
    coping: { outside: 48.3, notch: { along: 45.4, down: 18 }, seat: round }
    chamfer: { leg: 207.1 }
`
  const set = layOut(text, 'a3', 'line', { strips: true })!
  const { left, right, top, bottom } = set.plan.margins
  const { width, height } = set.plan.paper
  let seen = 0
  for (const { kind, draw } of set.pages) {
    if (kind !== 'tile') continue
    const { lines } = opened(draw())
    for (const { points } of lines.filter((line) => line.kind === 'fill'))
      for (const { x, y } of points) {
        seen++
        above(Math.min(x - left, width - right - x, y - bottom, height - top - y), -0.01)
      }
  }
  expect(seen).toBeGreaterThan(40)
})
