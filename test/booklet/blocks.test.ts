import { describe, expect, test } from 'vitest'
import { framingRows } from '../../src/booklet/framing-rows.ts'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { partsOf } from '../../src/stock/parts.ts'
import { designScrews } from '../../src/stock/screws.ts'
import { designOf } from '../support/design-of.ts'
import { above, atLeast, atMost, below } from '../support/hold.ts'
import { assertNear } from '../support/near.ts'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'

const wide = `title: Wide
units: mm
stock: { timber: [3000, 3600] }
ramps:
  - width: 3000
    height: { deck: 640 }
    transition: { circle: { surface: 1700 }, tangent: { surface: 0 } }
    toe: 40
    deck: 500
    studs: { section: 38 x 89, every: 200 }
    skin: [9 plywood, 9 plywood, 6 hardboard]
    run-out: { sheet: 1.5 steel }
    deck-board: 15 plywood
    coping: { outside: 60.3, up: 8, out: 6 }
    chamfer: { leg: 120 }
`
/** A rib under the seams of the first and the last layer, and the second's where none is. */
const ribbed = wide.replace('    toe: 40', '    sides: { count: 3 }\n    toe: 40')

const partsIn = (text: string) => {
  const design = designOf(text)
  const solved = solveDesign(design)
  if (solved.stopped) throw new Error('stopped')
  return { ramp: curvedOf(solved.ramps)[0]!, timbers: partsOf(design, solved).timbers }
}

describe('blocks under seams without a rib', () => {
  test('are set before the skin, each named with its seam and the timbers beside it', () => {
    const { ramp, timbers } = partsIn(wide)
    const blocks = timbers.filter(({ part }) => part === 'block')
    expect(blocks.length).toBeGreaterThan(8)
    const said = bookletSaid(wide, ['framing', 'skin'])
    const step = /set the blocks .*?\. Measure/.exec(said)![0]
    // rows of screws are on timbers that run through; into two short blocks of a layer goes one on either side of the seam, into
    // its three longer ones two, as into the two of 181 under the board
    expect(said).toContain('it is screwed to them on its side of the seam')
    expect(said.match(/, and 16 of 4\.5 × \d+ \([A-Z]\) into the blocks under its seams/g)).toHaveLength(3)
    expect(bookletSaid(wide, ['deck'])).toMatch(/, and 8 of .* into the blocks under its seams: two in each/)
    const all = designScrews(designOf(wide), [ramp], timbers)
    const rows = [...ramp.skin, ramp.deckBoard!].flatMap((own) => own.rows.map(({ across }) => across.length))
    expect(
      all.reduce((sum, { use, count }) => sum + (use === 'skin' || use === 'deck board' ? count : 0), 0),
    ).toBe(rows.reduce((sum, count) => sum + count, 0) + 3 * 16 + 8)
    // the figures' words count all that are bought
    const sheets = framingRows(ramp, 'mm').filter(([name]) => /^(skin|board)/.test(name))
    expect(sheets.map(([, words]) => Number(/, (\d+) screws of \d+$/.exec(words)![1]))).toEqual(
      [...ramp.skin, ramp.deckBoard!].map((own, i) =>
        own.rows.reduce((sum, { across }) => sum + across.length, i < 3 ? 16 : 8),
      ),
    )
    for (const { rows } of ramp.skin) expect(rows.every(({ stud }) => stud !== null)).toBe(true)
    // panels of 2440, a gap of 3: layers 1 and 3 and the board meet at 2440 + 1.5 from the left, layer 2, begun at the other side, at
    // 3000 − 2441.5 = 558.5
    expect(step).toContain('559 from the left, under the skin T17 to T21 between studs 1 to 6;')
    expect(step).toContain(
      '2442 from the left, under the skin T12 to T16 between studs 1 to 6, under the deck board T22 and T23 between timbers 8 to 10.',
    )
    expect(ramp.skin.map(({ acrossSeams }) => acrossSeams.map(({ at }) => Math.round(at)))).toEqual([
      [2442],
      [559],
      [2442],
    ])
    // each is as long as what is free between those two
    for (const { place, length } of blocks) {
      const [a, b] = place!.between.map((number) => {
        const stud = ramp.studs[number - 1]
        const timber = ramp.deckTimbers[number - 1 - ramp.studs.length]
        return stud ? { at: stud.at, width: stud.width } : { at: timber!.x, width: timber!.width }
      })
      assertNear(length, b!.at - b!.width / 2 - (a!.at + a!.width / 2), 1e-9)
    }
    expect(said.indexOf('set the blocks under')).toBeLessThan(said.indexOf('before any skin goes on'))
    const told = [...said.matchAll(/Where no rib lies, set blocks/g)]
    expect(told).toHaveLength(1)
    expect(told[0]!.index).toBeLessThan(said.indexOf('Bent skin is a spring'))
  })

  test('are screwed at a slant, and only what is left of the count through the sides', () => {
    const { timbers } = partsIn(wide)
    const blocks = timbers.filter(({ part }) => part === 'block').length
    const said = bookletSaid(wide, ['framing'])
    const [, through] = /through the side, (\d+) in all/.exec(said)!
    // two in each of two ends
    expect(Number(through)).toBe(4 * (timbers.length - blocks))
    const [, long, each, from, down, near, far] =
      /2 screws of 5 × (\d+) \(\w\) in each end, (\d+) in all\. They begin (\d+) from its end and cross the joint (\d+) below the top; at the end nearer to the toe (\d+) in from either long edge, at the other (\d+),/
        .exec(said)!
        .map(Number) as [number, number, number, number, number, number, number]
    expect(each).toBe(4 * blocks)
    // a straight line through both places: its point stays in wood 38 thick and in a stud 38 wide
    const slant = Math.hypot(from, down)
    below((long * down) / slant, 38)
    below((long * from) / slant - from, 38)
    above((long * from) / slant - from, 25)
    atLeast(far - near, 5)
    atMost(far, 89 / 2)
  })

  test('are named so among all pieces, and other timbers are not', () => {
    const said = bookletSaid(wide)
    expect(said).toMatch(/T12 and T17 2 blocks, skin 92 long/)
    expect(said).toMatch(/T22 and T23 2 blocks, deck board 181 long/)
    expect(said).toMatch(/T1 to T11 11 timbers 2964 long/)
  })

  test('are told with their length where the boards are sawn, and with a caution where one is short', () => {
    const said = bookletSaid(wide, ['cutting'])
    const { timbers } = partsIn(wide)
    const blocks = timbers.filter(({ part }) => part === 'block')
    for (const { mark, words, length } of blocks)
      expect(said.replaceAll(/\s+/g, ' ')).toContain(`${mark} ${words} (${Math.round(length)})`)
    const caution = 'Pieces shorter than 150: hold none by hand at a turning blade.'
    expect(Math.min(...blocks.map(({ length }) => length))).toBeLessThan(150)
    expect(said).toContain(caution)
    expect(said.indexOf(caution)).toBeLessThan(said.indexOf('Square one end, then cut'))
    expect(bookletSaid(templateText('quarter-mm'), ['cutting'])).not.toContain('turning blade')
  })

  test('are not spoken of where ribs carry every seam', () => {
    const narrow = wide.replace('width: 3000', 'width: 1216')
    expect(bookletSaid(narrow, ['framing', 'skin'])).not.toMatch(/\bblocks?\b/)
    const { ramp, timbers } = partsIn(ribbed)
    const bare = ramp.skin.flatMap(({ acrossSeams }) => acrossSeams).filter(({ rib }) => !rib)
    expect(bare.length).toBe(1)
    expect(timbers.some(({ part }) => part === 'block')).toBe(true)
    expect(bookletSaid(ribbed, ['framing'])).toContain('set the blocks under')
    const carried = ribbed.replace('[9 plywood, 9 plywood, 6 hardboard]', '[18 plywood]')
    expect(partsIn(carried).ramp.skin[0]!.acrossSeams.map(({ at, rib }) => [at, rib])).toEqual([[1500, true]])
    expect(bookletSaid(carried, ['framing', 'skin'])).not.toMatch(/\bblocks?\b/)
  })
})
