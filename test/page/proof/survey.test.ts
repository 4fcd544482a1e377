import { describe, expect, it } from 'vitest'
import type { PaperName } from '../../../src/design/design.ts'
import type { Mark } from '../../../src/drawing/drawing.ts'
import type { Cover } from '../../../src/page/cover/cover.ts'
import type { TileGroup } from '../../../src/page/set/tile-groups.ts'
import { above, atLeast, atMost, hold } from '../../support/hold.ts'
import { layOut } from '../../support/lay-out.ts'
import { assertNear } from '../../support/near.ts'
import { randomFrom } from '../../support/random.ts'
import { drifted, honest, type Laid, placeOf, slipped, stretched, surveyed } from '../../support/taping.ts'
import { templates, templateText } from '../../support/templates.ts'
import { jobOf } from '../../tape-up/jobs.ts'
import { type RawQuarter, rawQuarters } from '../../tape-up/raw-design.ts'

/** Toe, lip and middle of the curve by the closed forms of docs/geometry.md. */
const curveOf = (raw: RawQuarter) => {
  const R = raw.radius.value + (raw.radius.layer === 'frame' ? 0 : raw.skin)
  const c = raw.tangent.value + (raw.tangent.layer === 'frame' ? R : R - raw.skin)
  const a1 =
    raw.height.layer === 'surface'
      ? Math.acos((c - raw.height.value) / (R - raw.skin))
      : Math.acos((c - raw.height.value + (raw.height.layer === 'deck' ? raw.board : 0)) / R)
  const a0 = Math.acos((c - raw.toe) / R)
  const at = (angle: number) => ({ x: R * (Math.sin(angle) - Math.sin(a0)), y: c - R * Math.cos(angle) })
  return { toe: at(a0), lip: at(a1), middle: at((a0 + a1) / 2) }
}

/** All words of a page in the order in which they are drawn. */
const wordsOf = (marks: readonly Mark[]): string =>
  marks
    .flatMap((mark) =>
      mark.kind === 'text' ? [mark.text] : mark.kind === 'group' ? [wordsOf(mark.marks)] : [],
    )
    .join(' ')

interface Sheaf {
  readonly name: string
  readonly cover: Cover
  readonly group: TileGroup
  readonly curve: ReturnType<typeof curveOf>
  /** what the map says */
  readonly map: string
  readonly units: 'mm' | 'in'
}

const sheaves = (name: string, text: string, paper: PaperName, cover: Cover): readonly Sheaf[] => {
  const set = layOut(text, paper, cover)
  if (!set) return []
  const maps = set.pages.filter(({ kind }) => kind === 'map')
  const raws = rawQuarters(text)
  return set.groups.map((group) => ({
    name: `${name} ${group.pattern.ramp} on ${paper}, ${cover}: ${group.tiles.length} tiles`,
    cover,
    group,
    curve: curveOf(raws.find((raw) => raw.name === group.pattern.ramp) ?? raws[0]!),
    map: maps
      .filter(({ bookmark }) => bookmark.split(', page ')[0] === `Map: ${group.pattern.name}`)
      .map(({ draw }) => wordsOf(draw()))
      .join(' '),
    units: /^units: in/m.test(text) ? 'in' : 'mm',
  }))
}

const papers = ['letter', 'a4', 'legal', 'tabloid', 'a3'] as const
const all = [
  ...templates.flatMap((name) =>
    papers.flatMap((paper) =>
      (['whole', 'line', 'ribbon'] as const).flatMap((cover) =>
        sheaves(name, templateText(name), paper, cover),
      ),
    ),
  ),
  ...Array.from({ length: 36 }, (_, i) => jobOf(i + 1)).flatMap(({ text, cover }, i) => [
    ...sheaves(`job ${i + 1}`, text, 'letter', cover),
    ...sheaves(`job ${i + 1}`, text, 'a4', 'line'),
  ]),
]
const large = all.filter(({ group }) => group.tiles.length >= 8)
const small = all.filter(({ group }) => group.tiles.length < 8)

/** The most that a line is off, in units of its tolerance: above 1 it is seen. */
const seen = ({ group, curve }: Sheaf, laid: Laid): number =>
  Math.max(
    ...group.survey.map(
      ({ words, value, tolerance }) => Math.abs(surveyed(group, curve, words, laid) - value) / tolerance,
    ),
  )

const jointsOf = (group: TileGroup) => {
  const place = placeOf(group)
  const places = group.tiles.map(place)
  return { across: Math.max(...places.map((p) => p.column)), up: Math.max(...places.map((p) => p.row)) }
}

/** Rows run level, so that their snap lines are chalked at heights above the panel's bottom edge. */
const level = ({ group }: Sheaf): boolean =>
  group.tiles.every(({ snap }) => Math.abs(snap[0].y - snap[1].y) < 1e-6)

/** The most that a page's snap line is off its chalk, which can only be drawn on the panel, at the height that the map says. */
const offChalk = ({ group }: Sheaf, laid: Laid): number =>
  Math.max(
    ...group.tiles.flatMap((tile) =>
      tile.snap
        .filter(({ y }) => y > 0 && y < group.pattern.height)
        .map((p) => Math.abs(laid(tile, p).y - p.y)),
    ),
  )

/** A pencil line beside another is seen from here on, mm (common practice, no source). */
const visible = 0.5

it('there are sets enough to tell', () => {
  expect(large.length).toBeGreaterThan(50)
  expect(small.length).toBeGreaterThan(40)
  expect(new Set(large.map(({ cover }) => cover))).toEqual(new Set(['whole', 'line', 'ribbon']))
})

describe('the survey of eight tiles and more', () => {
  it('has four long distances at least, the longest more than half of the panel’s length', () => {
    for (const { name, group } of large) {
      const crosses = group.survey.filter(({ words }) => words.startsWith('cross '))
      const long = group.survey.filter(({ value }) => value > 0.25 * group.pattern.length)
      expect(crosses.length, name).toBeGreaterThanOrEqual(3)
      expect(long.length, name).toBeGreaterThanOrEqual(4)
      expect(Math.max(...crosses.map(({ value }) => value)), name).toBeGreaterThan(0.5 * group.pattern.length)
    }
  })

  it('gives the true distances, and prints them with tolerances that a rule can tell', () => {
    for (const { name, group, curve, map } of large)
      for (const { words, value, tolerance } of group.survey) {
        assertNear(
          surveyed(group, curve, words, (_, p) => p),
          value,
          0.001,
          `${name}: ${words}`,
        )
        atLeast(tolerance, 0.4, `${name}: ${words}`)
        atMost(tolerance, 1.6, `${name}: ${words}`)
        const fine = `${(Math.round(value * 10) / 10).toFixed(1).replace(/\.0$/, '')} ±${tolerance.toFixed(1)} mm`
        expect(map.replaceAll('.0 ±', ' ±'), `${name}: ${words}`).toContain(fine)
      }
  })

  it('sees pages that each lie 0.25 mm too far from the one before, along the rows', () => {
    for (const sheaf of large)
      expect(seen(sheaf, drifted(sheaf.group, 'along', 0.25)), sheaf.name).toBeGreaterThan(1)
  })

  it('sees the same at the upright joints alone where a row has six of them', () => {
    let count = 0
    for (const sheaf of large) {
      if (jointsOf(sheaf.group).across < 6) continue
      expect(seen(sheaf, slipped(sheaf.group, 'along', 0.25)), sheaf.name).toBeGreaterThan(1)
      count++
    }
    expect(count).toBeGreaterThan(25)
  })

  it('or the chalked snap lines see them, up the rows', () => {
    let distances = 0
    for (const sheaf of large) {
      const joints = jointsOf(sheaf.group)
      for (const laid of [
        ...(joints.up >= 2 ? [slipped(sheaf.group, 'up', 0.25)] : []),
        ...(joints.up + joints.across >= 2 && level(sheaf) ? [drifted(sheaf.group, 'up', 0.25)] : []),
      ]) {
        const far = seen(sheaf, laid) > 1
        if (far) distances++
        hold(far || (level(sheaf) && offChalk(sheaf, laid) >= visible - 1e-9), sheaf.name)
      }
    }
    expect(distances).toBeGreaterThan(30)
  })

  it('has the snap lines at the heights that the map says', () => {
    let rows = 0
    for (const sheaf of large) {
      if (!level(sheaf)) continue
      const said = /above the bottom edge: (.*?) (?:mm|in)\./.exec(sheaf.map)?.[1]
      expect(said, sheaf.name).toBeDefined()
      const heights = new Map(
        said!.split(', ').map((part) => {
          const [row, ...length] = part.split(' ')
          // `17 3/16`; a minus stands before the whole
          const size = length.reduce((sum, word) => {
            const [top, bottom] = word.replace('-', '').split('/').map(Number)
            return sum + top! / (bottom ?? 1)
          }, 0)
          const mm = part.includes(' -') ? -size : size
          return [row, sheaf.units === 'in' ? mm * 25.4 : mm]
        }),
      )
      for (const { row, snap } of sheaf.group.tiles) {
        const height = heights.get(row)
        if (height !== undefined) assertNear(height, snap[0].y, 0.01, sheaf.name)
        else {
          expect(sheaf.map, sheaf.name).toMatch(new RegExp(`Beyond the panel is [^:]*row ${row}\\b`))
          hold(!(snap[0].y > 0 && snap[0].y < sheaf.group.pattern.height), sheaf.name)
        }
      }
      rows += heights.size
    }
    expect(rows).toBeGreaterThan(100)
  })

  it.each(['along', 'up'] as const)('sees a drawing printed half a per cent too long %s the rows', (way) => {
    // where few rows hold the crosses near each other it needs 0.52 per cent; the test square shows 0.75 mm then
    for (const sheaf of large)
      expect(seen(sheaf, stretched(sheaf.group, way, 0.0052)), sheaf.name).toBeGreaterThan(1)
  })

  it('lets 95 of 100 careful tapings pass', () => {
    // each builder has a hand of his own: one standard deviation of 0.1 to 0.15 mm a joint
    for (const sheaf of large) {
      const random = randomFrom(91)
      const { group, curve } = sheaf
      let passed = 0
      let passedRead = 0
      for (let i = 0; i < 500; i++) {
        const laid = honest(group, 0.1 + 0.05 * random(), random)
        const off = group.survey.map(({ words, value, tolerance }) => ({
          off: surveyed(group, curve, words, laid) - value,
          tolerance,
        }))
        if (off.every(({ off, tolerance }) => Math.abs(off) <= tolerance)) passed++
        // and a tape that is read 0.25 mm wrong at most
        if (off.every(({ off, tolerance }) => Math.abs(off + 0.5 * random() - 0.25) <= tolerance))
          passedRead++
      }
      expect(passed / 500, sheaf.name).toBeGreaterThanOrEqual(0.95)
      expect(passedRead / 500, `${sheaf.name}, read with a tape`).toBeGreaterThanOrEqual(0.9)
    }
  })

  it('and the pair marks show two pages in each other’s places', () => {
    for (const { name, group } of large) {
      const numberAt = (tile: (typeof group.tiles)[number], edge: string): string | undefined => {
        const joint = tile.joints.find((one) => one.edge === edge)
        return joint && [tile.number, joint.neighbour].sort((a, b) => a - b).join()
      }
      const beyond = { left: 'right', right: 'left', bottom: 'top', top: 'bottom' } as const
      for (const one of group.tiles)
        for (const other of group.tiles) {
          if (one.number >= other.number) continue
          const lies = (place: (typeof group.tiles)[number]) =>
            place === one ? other : place === other ? one : place
          const wrong = [one, other].flatMap((place) =>
            place.joints.filter(({ edge, neighbour }) => {
              const beside = group.tiles.find((tile) => tile.number === neighbour)!
              return numberAt(lies(place), edge) !== numberAt(lies(beside), beyond[edge])
            }),
          )
          above(wrong.length, 0, `${name}: ${one.number} and ${other.number}`)
        }
    }
  })

  it('does not send the builder to the snap lines for it', () => {
    for (const { name, map } of large) expect(map, name).not.toContain('trust the snap lines')
  })
})

it('smaller sets say that they lean on the snap lines', () => {
  for (const { name, map } of small)
    expect(map, name).toContain('trust the snap lines and the scales at the joints')
})
