import { expect, test } from 'vitest'
import { plateRows } from '../../src/booklet/book/sections/cutting/plate-rows.ts'
import { bookletSaid, longQuarter } from './said.ts'
import { withOffsets } from './solved.ts'

const long = (stud: string): string =>
  longQuarter.replace('    skin', `    studs: { section: ${stud} }\n    skin`)

test('screws of a plate over a joint have places in words: a row clear of the timber, one along the edge', () => {
  // half of 38, 45 or 60 of a timber on edge and 10 clear, on whole fives
  for (const [stud, inner] of [
    ['38 x 89', 30],
    ['45 x 95', 35],
    ['60 x 90', 40],
  ] as const) {
    const [ramp] = withOffsets(long(stud)).quarters
    expect(ramp!.splices.length).toBeGreaterThan(0)
    for (const splice of ramp!.splices) {
      const timber = [...ramp!.studs, ...ramp!.deckTimbers][splice.timber]!
      expect(plateRows(splice, timber, 'mm')).toEqual({ edge: 25, inner })
      // 75 to either side: 25 of it is edge, 10 too few are left for two rows
      const narrow = { ...splice, plate: { ...splice.plate, size: [140, splice.plate.size[1]] as const } }
      expect(plateRows(narrow, timber, 'mm').inner).toBe(inner === 30 ? 30 : null)
    }
  }
  const said = bookletSaid(long('38 x 89'), ['cutting'])
  expect(said).toMatch(
    /in two rows on each side of the joint, \d in each: 30 from the joint and 25 from the plate's edge, the first and the last 25 from its ends, all evenly apart\./,
  )
})
