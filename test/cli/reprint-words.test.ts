import { describe, expect, it } from 'vitest'
import { pickWords } from '../../src/cli/reprint/words.ts'
import type { PlanPage, PlanPlace, SetPlan } from '../../src/drawing/set-plan.ts'
import { pickPages } from '../../src/read/pick-pages.ts'

const overlap = 12

/** A page of 100 points in a row and column from 1. */
const place = (pattern: string, row = 1, column = 1): PlanPlace => {
  const pitch = 100 - (overlap * 72) / 25.4
  return { pattern, toPattern: [1, 0, 0, 1, column * pitch, row * pitch], window: [0, 0, 100, 100] }
}

/** A plan as it was while tiles had a row letter and a number each: two ramps, the second on the next free row; a trial each. */
const plan = (reprint?: readonly number[]): SetPlan => {
  const tiles = (pattern: string, ...names: readonly string[]) =>
    names.map((tile) => ({
      kind: 'tile' as const,
      tile,
      places: [place(pattern, tile.charCodeAt(0) - 64, Number(tile.slice(1)))],
    }))
  const pages: readonly Omit<PlanPage, 'page'>[] = [
    { kind: 'map', places: [] },
    { kind: 'square', places: [place('square')] },
    { kind: 'trial', tile: 'F1', places: [place('outer/lip')] },
    ...tiles('outer/side', 'A1', 'A2', 'B2', 'B3', 'C3', 'C12'),
    { kind: 'map', places: [] },
    { kind: 'trial', tile: 'G1', places: [place('inner/lip')] },
    ...tiles('inner/side', 'D1', 'E1', 'E2'),
  ]
  return {
    version: 1,
    set: 'BCDF-GHJK-2345',
    paper: { name: 'a4', width: 210, height: 297 },
    margins: { top: 10, right: 10, bottom: 10, left: 10 },
    overlap,
    printer: null,
    correction: [1, 0, 0, 1],
    expected: [],
    pages: pages.map((page, i) => ({ page: i + 1, ...page })),
    ...(reprint ? { reprint } : {}),
    seal: '',
  }
}

const heldBy = (of: SetPlan): readonly number[] => of.reprint ?? of.pages.map(({ page }) => page)

const words = (of: SetPlan, ...said: readonly string[]) =>
  pickWords('low.pdf', of, pickPages(of, heldBy(of), said))

describe('an unknown page', () => {
  it('is told with the nearest tiles and the map of the set', () => {
    expect(words(plan(), 'B9', 'E3', 'maap')).toBe(
      [
        'there is no page `B9` in set BCDF-GHJK-2345; near it: C12, B3, B2',
        // C3 and E1 are two steps away: the first in the order of taping
        'there is no page `E3` in set BCDF-GHJK-2345; near it: E2, C3, E1',
        'there is no page `maap` in set BCDF-GHJK-2345; did you mean map?',
        'outer/side, top row first:',
        '  .    .    C3   .    .    .    .    .    .    .    .    C12',
        '  .    B2   B3   .    .    .    .    .    .    .    .    .',
        '  A1   A2   .    .    .    .    .    .    .    .    .    .',
        'inner/side, top row first:',
        '  E1  E2',
        '  D1  .',
        'tiles also by their taping numbers, 1 to 9',
        'other pages: map (2: map-1 …), square, trial (2: trial-1 …)',
      ].join('\n'),
    )
  })

  it('takes nothing from those that are known', () => {
    expect(words(plan(), 'b2', '7', 'trial', 'MAPS', 'g1')).toBeNull()
  })
})

describe('picked', () => {
  it.each([
    [['1'], [4]],
    [['9'], [14]],
    [['d1'], [12]],
    [['map'], [1, 10]],
    [['trial'], [3, 11]],
    [['trial-2'], [11]],
    [
      ['map1', 'Maps-2'],
      [1, 10],
    ],
    [
      ['G1', ' f1 ', '0003', 'b2'],
      [3, 6, 11],
    ],
  ] as const)('%j are pages %j', (said, numbers) => {
    expect(pickPages(plan(), heldBy(plan()), said).numbers).toEqual(numbers)
  })

  it.each([
    '',
    ' ',
    '0',
    '10',
    'A',
    's',
    'tile',
    'tiles',
    '-1',
    '1.5',
    'A01',
    '__proto__',
    'A9999999',
    'map-3',
    'map-0',
    'square-01x',
  ])('not %j', (said) => {
    expect(pickPages(plan(), heldBy(plan()), [said])).toMatchObject({ numbers: [], unknown: [{ said }] })
  })

  it('a name that a viewer shows is found, with dashes too: of several pages called so, all', () => {
    const labels = new Map([
      [1, 'Map outer ramp'],
      [3, 'Strips 2'],
      [10, 'Map inner'],
      [11, 'Strips 2'],
    ])
    const called = (said: string) => pickPages(plan(), heldBy(plan()), [said], labels).numbers
    expect(called('map outer ramp')).toEqual([1])
    expect(called('Map-Inner')).toEqual([10])
    expect(called('strips-2')).toEqual([3, 11])
    // words and numbers mean what they mean without names
    expect(called('map')).toEqual([1, 10])
    expect(called('map-2')).toEqual([10])
    expect(called('2')).toEqual([5])
  })

  it('what a reprint holds of a kind is taken; what it does not hold is said', () => {
    expect(pickPages(plan([10, 4]), [10, 4], ['map', '1', '2', 'square'])).toEqual({
      numbers: [4, 10],
      unknown: [],
      absent: ['2', 'square'],
    })
  })
})
