import { describe, expect, it } from 'vitest'
import type { Drawing } from '../../../src/drawing/drawing.ts'
import { type Affine, affineApply, affineIdentity, affineThen } from '../../../src/geometry/affine.ts'
import { pathBounds } from '../../../src/geometry/bounds.ts'
import type { Path } from '../../../src/geometry/path.ts'
import { pathSample } from '../../../src/geometry/sample.ts'
import { readLength, type Units } from '../../../src/length.ts'
import { type Coverage, patternCover } from '../../../src/page/cover/coverage.ts'
import { showMarks } from '../../../src/page/cover/shown-marks.ts'
import { defaultMargins, paperOf } from '../../../src/page/sheet/paper.ts'
import type { Pattern } from '../../../src/pattern/pattern.ts'
import { generatedQuarter, patternsOf, quarterText } from '../../bench/ramps.ts'
import { above, atLeast, hold } from '../../support/hold.ts'
import { layOut } from '../../support/lay-out.ts'
import { assertNear } from '../../support/near.ts'
import type { Pt } from '../../support/pt.ts'
import { opened } from '../../support/strokes.ts'
import { templates, templateText } from '../../support/templates.ts'

const windowOf = (paper: 'letter' | 'a4') => {
  const { width, height } = paperOf(paper)
  const margin = defaultMargins(paper)
  return {
    x0: margin.left,
    y0: margin.bottom,
    x1: width - margin.right,
    y1: height - margin.top,
  }
}

/** mm from a point to the nearest edge of the window that holds it deepest, negative outside all. */
const depth = ({ lattice, cells }: Coverage, p: Pt): number => {
  const { width, height, overlap } = lattice
  const [a, b, c, d, e, f] = lattice.toFrame
  const u = a * p.x + c * p.y + e
  const v = b * p.x + d * p.y + f
  let deepest = Number.NEGATIVE_INFINITY
  for (const { column, row } of cells) {
    const left = column * (width - overlap)
    const low = row * (height - overlap)
    deepest = Math.max(deepest, Math.min(u - left, v - low, left + width - u, low + height - v))
  }
  return deepest
}

/** Frames of timbers; behind them each splice has two lines, one for each piece, and the frame of its plate. */
const timbersOf = ({ markPaths, pieces, screws }: Pattern) => {
  const count = markPaths.length - 3 * (pieces - 1)
  expect(count).toBe(screws.length)
  const joints = markPaths.slice(count).filter((path) => path.pieces.length === 1)
  expect(joints).toHaveLength(2 * (pieces - 1))
  return { timbers: markPaths.slice(0, count), joints }
}

/** Distance of a point from the straight through a path's ends, mm. */
const offLine = ({ start: p, pieces }: Pattern['markPaths'][number], at: Pt): number => {
  const q = pieces.at(-1)!.to
  const [x, y] = [q.x - p.x, q.y - p.y]
  return Math.abs(x * (at.y - p.y) - y * (at.x - p.x)) / Math.hypot(x, y)
}

/**
 * Rings have 2 mm: worked out from the corners of the timbers, so far off both edges of one that lies flat, or a quarter where the pipe's screw
 * passes there; at half the depth of one on edge and so far off its lower edge, or lower under the pipe; where a splice runs along that way, a quarter of their width to either side.
 */
const screwsOf = (pattern: Pattern, units: Units): readonly Pt[] => {
  const off = units === 'mm' ? 12 : 12.7
  const { timbers, joints } = timbersOf(pattern)
  let spliced = 0
  const screws = timbers.flatMap((path, n) => {
    const [a, b, c, d] = [path.start, ...path.pieces.slice(0, 3).map(({ to }) => to)] as [Pt, Pt, Pt, Pt]
    const middle = (p: Pt, q: Pt): Pt => ({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 })
    const far = (p: Pt, q: Pt): number => Math.hypot(p.x - q.x, p.y - q.y)
    const deep = far(b, c) >= far(a, b)
    const [from, to] = deep ? [middle(a, b), middle(c, d)] : [middle(a, d), middle(b, c)]
    const cut = deep && joints.some((joint) => offLine(joint, from) < 0.01 && offLine(joint, to) < 0.01)
    if (cut) spliced++
    const long = far(from, to)
    // half the depth goes to the next whole mm; halves of what is sold in inches are sixteenths
    const half = units === 'mm' ? Math.ceil(long / 2 - 1e-6) : long / 2
    // under the point of the pipe's screw, 50 long and 4 of it in the wall, by half of 5 and 4.5 and 3
    const under = Math.ceil(50 - 4 + 4.75 + 3)
    const ways = deep
      ? [[half, under], [long - off]]
      : [
          [off, long / 4],
          [long - off, (3 * long) / 4],
        ]
    return ways.map((places, i) => {
      const aside = cut ? (i === 0 ? -0.25 : 0.25) : 0
      const all = places.map((at) => ({
        x: from.x + (at / long) * (to.x - from.x) + aside * (a.x - b.x),
        y: from.y + (at / long) * (to.y - from.y) + aside * (a.y - b.y),
      }))
      const found = pattern.screws[n]!.middles[i]!
      return all.find((p) => far(p, found) < 1e-6) ?? all[0]!
    })
  })
  expect(spliced).toBe(pattern.pieces - 1)
  const found = pattern.screws.flatMap(({ middles }) => middles)
  for (const [i, { x, y }] of found.entries())
    assertNear(Math.hypot(screws[i]!.x - x, screws[i]!.y - y), 0, 1e-6, 'screw')
  return screws
}

const share = (coverage: Coverage, screws: readonly Pt[]): number =>
  screws.filter((p) => depth(coverage, p) >= 2).length / screws.length

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length

const patterns = Array.from({ length: 60 }, (_, i) => patternsOf(quarterText([generatedQuarter(i)]))[0]!)

describe.each([
  // LIP and TOE come first
  ['ribbon', 'letter', 0.07],
  ['ribbon', 'a4', 0.07],
  ['line', 'letter', 0.005],
  ['line', 'a4', 0.01],
] as const)('pages of a %s on %s are moved', (cover, paper, gain) => {
  const moved = patterns.map((pattern) => {
    const before = patternCover(pattern, cover, windowOf(paper), 12).found()
    return { pattern, before, after: showMarks(pattern, cover, before) }
  })

  it('without a page more, and show more screws of studs, in no ramp fewer', () => {
    const shares = moved.map(({ pattern, before, after }, i) => {
      expect(after.cells.length, `${i}`).toBe(before.cells.length)
      const screws = screwsOf(pattern, 'mm')
      const [was, is] = [share(before, screws), share(after, screws)]
      expect(is, `${i}`).toBeGreaterThanOrEqual(was)
      return { was, is }
    })
    expect(mean(shares.map(({ is }) => is)) - mean(shares.map(({ was }) => was))).toBeGreaterThan(gain)
  })

  it('and still hold what is needed half the overlap inside, hang together, and have no slivers', () => {
    moved.forEach(({ pattern, before, after }, i) => {
      const line = pathSample(pattern.line, 1)
      for (const p of line) atLeast(depth(after, p), 6 - 1e-6, `${i}`)
      const reached = new Set([after.cells[0]!])
      for (const at of reached)
        for (const cell of after.cells)
          if (Math.abs(cell.column - at.column) + Math.abs(cell.row - at.row) === 1) reached.add(cell)
      hold(reached.size === after.cells.length)
      const thinnest = (coverage: Coverage): number => {
        const { width, height, overlap } = coverage.lattice
        const [a, b, c, d, e, f] = coverage.lattice.toFrame
        const lengths = new Map<number, number>()
        for (const { x, y } of line) {
          const column = Math.floor((a * x + c * y + e - overlap / 2) / (width - overlap))
          const row = Math.floor((b * x + d * y + f - overlap / 2) / (height - overlap))
          // no drawing has a million rows
          const cell = column * 1e6 + row
          lengths.set(cell, (lengths.get(cell) ?? 0) + 1)
        }
        return Math.min(...lengths.values())
      }
      // points about a millimetre apart
      above(thinnest(after), Math.min(40, thinnest(before)) - 4, `${i}`)
    })
  })

  it('the same way every time', () => {
    const { pattern, before, after } = moved[7]!
    expect(showMarks(pattern, cover, patternCover(pattern, cover, windowOf(paper), 12).found())).toEqual(
      after,
    )
    expect(before.cells.length).toBe(after.cells.length)
  })
})

/** Whether a path can be a ring of 4 mm: it is no wider or higher than twice that, however it is turned. */
const maySize = (path: Path, [a, b]: Affine): boolean => {
  const { x0, y0, x1, y1 } = pathBounds(path)
  return Math.max(x1 - x0, y1 - y0) * Math.hypot(a, b) < 8
}

/** Whole rings of a page, in the pattern, and its words. */
const onPage = (drawing: Drawing, toPattern: Affine | undefined) => {
  const rings: Pt[] = []
  const words: string[] = []
  const walk = (marks: Drawing, map: Affine): void => {
    for (const mark of marks)
      if (mark.kind === 'group') walk(mark.marks, affineThen(mark.map, map))
      else if (mark.kind === 'text') words.push(mark.text)
      else if (toPattern && mark.layer === 'mark' && maySize(mark.path, map)) {
        const points = pathSample(mark.path, 0.2).map((p) => {
          const { x, y } = affineApply(map, p)
          return affineApply(toPattern, { x: (x * 72) / 25.4, y: (y * 72) / 25.4 })
        })
        const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)]
        const size = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)]
        if (size.every((mm) => Math.abs(mm - 4) < 0.05))
          rings.push({
            x: (Math.max(...xs) + Math.min(...xs)) / 2,
            y: (Math.max(...ys) + Math.min(...ys)) / 2,
          })
      }
  }
  walk(drawing, affineIdentity)
  return { rings, words }
}

/** A figure of paper as mm: strong or shy is a 32nd of an inch more or less. */
const lengthOf = (said: string, units: Units): number => {
  const reading = readLength(said.replace(/[+–]$/, ''), units)
  if (!('mm' in reading)) throw new RangeError(said)
  return reading.mm + (said.endsWith('+') ? 25.4 / 32 : said.endsWith('–') ? -25.4 / 32 : 0)
}

/** The table of screws on a map, column by column as it is read: whose each is, and its two figures. */
const screwList = (map: Drawing) => {
  const words = opened(map).words.map(({ text, corners: [a, b, , d] }) => ({
    text,
    x0: a!.x,
    x1: b!.x,
    y: a!.y,
    tall: (d!.y - a!.y) / 1.3,
  }))
  const heads = words.filter(({ text }) => text === 'screw of').sort((a, b) => a.x0 - b.x0)
  return heads.flatMap((head, i) => {
    const own = words.filter(({ x0 }) => x0 > head.x0 - 0.01 && x0 < (heads[i + 1]?.x0 ?? 1e6) - 0.01)
    const ends = ['back', 'up'].map(
      (text) => own.find((word) => word.text === text && Math.abs(word.y - head.y) < 0.01)!.x1,
    )
    const below = own.filter(({ y, x1 }) => y < head.y - 0.01 && x1 < ends[1]! + 0.01)
    const heights = [...new Set(below.map(({ y }) => y.toFixed(3)))].map(Number).sort((a, b) => b - a)
    // as far down as rows follow each other evenly, 1.4 of their letters' height apart
    const step = 1.5 * head.tall
    const last = heights.findIndex((y, k) => (k === 0 ? head.y - 2 * head.tall : heights[k - 1]! - step) > y)
    const rows = heights.slice(0, last < 0 ? heights.length : last)
    let timber = 0
    return rows.flatMap((y) => {
      const row = below.filter((word) => Math.abs(word.y - y) < 0.01).sort((a, b) => a.x0 - b.x0)
      const name = row.find(({ text }) => /^(stud|timber) \d+$/.test(text))
      if (name) timber = Number(/\d+/.exec(name.text)![0])
      const figures = [
        [head.x0, ends[0]!],
        [ends[0]!, ends[1]!],
      ].map(([from, to]) =>
        row
          .filter((word) => word !== name && word.x0 > from! && word.x0 < to!)
          .reduce((said, { text }) => said + (said !== '' && /^\d/.test(text) ? ' ' : '') + text, ''),
      )
      return figures.every((one) => one !== '') ? [{ timber, figures }] : []
    })
  })
}

/** `3 to 5 and 7` as numbers. */
const numbersOf = (words: string): readonly number[] =>
  words.split(/, | and /).flatMap((part) => {
    const [from, to] = part.split(' to ').map(Number)
    return Array.from({ length: (to ?? from!) - from! + 1 }, (_, i) => from! + i)
  })

describe.each(templates)('the map of %s', (name) => {
  it.each(['whole', 'line', 'ribbon'] as const)(
    'names the studs whose screws are on no page of a %s, and lists where each is set out',
    (cover) => {
      for (const paper of ['letter', 'a4'] as const) {
        const set = layOut(templateText(name), paper, cover)!
        const pages = set.plan.pages.map((page, i) => ({
          ...page,
          ...onPage(set.pages[i]!.draw(), page.toPattern),
        }))
        const maps = pages.filter(({ kind }) => kind === 'map')
        set.groups.forEach(({ pattern }, n) => {
          const rings = pages.filter((page) => page.pattern === pattern.name).flatMap((page) => page.rings)
          const screws = screwsOf(pattern, name.includes('-in') ? 'in' : 'mm')
          const missing = pattern.markPaths.map(
            (_, i) =>
              screws
                .slice(2 * i, 2 * i + 2)
                .filter((p) => !rings.some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 0.1)).length,
          )
          const said = maps[n]!.words.join(' ')
            .replaceAll(/\s+/g, ' ')
            .match(/Not on (?:these pages|this page): ([^.]*)\./)?.[1]
          const named = (what: RegExp): readonly number[] => {
            const found = said?.match(what)?.[1]
            return found
              ? numbersOf(found.replaceAll(/(?:stud|timber)s? /g, '').replaceAll(' and ', ', '))
              : []
          }
          const studs = (count: number): readonly number[] =>
            missing.flatMap((of, i) => (of === count ? [i + 1] : []))
          expect(named(/(?<!one of )the screws of ([\w, ]*?)(?:, one of|$)/), paper).toEqual(studs(2))
          expect(named(/one of the screws of ([\w, ]*)$/), paper).toEqual(studs(1))
          const places = screws.filter((p) => !rings.some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 0.1))
          const units = /units: in/.test(templateText(name)) ? 'in' : 'mm'
          const listed = screwList(set.pages[pages.indexOf(maps[n]!)]!.draw())
          const lengths = listed.map(({ figures }) => figures.map((one) => lengthOf(one, units)))
          expect(lengths.length, paper).toBe(places.length)
          for (const { x, y } of places)
            hold(
              lengths.some(([u, v]) => Math.hypot(u! - x, v! - y) < 1),
              `${x}, ${y}`,
            )
          // each under the name of its timber
          const names = missing.flatMap((of, i) => Array.from({ length: of }, () => i + 1))
          expect(listed.map(({ timber }) => timber)).toEqual(names)
          if (cover === 'whole') expect(said).toBeUndefined()
          if (cover === 'ribbon') above(studs(2).length, 0)
        })
      }
    },
  )
})
