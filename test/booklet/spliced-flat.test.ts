import { expect, test } from 'vitest'
import { bookletSaid, longQuarter } from './said.ts'

const flat = `title: Long flat
units: mm
ramps:
  - kind: flat
    width: 1216
    length: 3600
    height: { surface: 113 }
    studs: { section: 38 x 89, every: 300 }
    skin: [18 plywood, 6 hardboard]
`

test('a side of a flat that is joined of pieces is tried by a straightedge and its length, one with a curve on its pages', () => {
  const [even, curved] = [bookletSaid(flat, ['cutting']), bookletSaid(longQuarter, ['cutting'])]
  expect(even).toMatch(/Lay a straightedge along both edges: they run through the joint without a step\./)
  expect(even).toContain('Measure the whole: 3600 long, both diagonals 3601.')
  expect(even).not.toContain('on the taped pages once more')
  expect(even).toContain('piece 1 from one end')
  expect(even).not.toContain('from the toe')
  expect(curved).toContain('on the taped pages once more')
  expect(curved).not.toContain('straightedge along both edges')
})

test('a side of a flat that no panel holds whole is sawn in pieces, its diagonals are measured when it is glued', () => {
  // upright joints on the middles of studs, every 300 from the ends: two pieces of 1800, as high as the surface less 24 of skin
  const said = bookletSaid(flat, ['cutting'])
  expect(said).toContain('Saw the pieces of the 2 sides of ramp, a 1800 × 89 and b 1800 × 89 of each')
  expect(said).not.toContain('3600 × 89')
  // √(2000² + 89²) = 2002, of one that a panel holds
  const whole = bookletSaid(flat.replace('length: 3600', 'length: 2000'), ['cutting'])
  expect(whole).toContain(
    'Saw the 2 sides of ramp, 2000 × 89, straight cuts with a guide. Both diagonals of each are 2002.',
  )
})

test('the plates over a joint are sawn before they are glued, and which way they lie is told', () => {
  for (const text of [flat, longQuarter]) {
    const said = bookletSaid(text, ['cutting'])
    expect(said.indexOf('with a guide: P1 and P2.')).toBeGreaterThan(0)
    expect(said.indexOf('with a guide: P1 and P2.')).toBeLessThan(said.indexOf('Glue a plate'))
  }
  // 200 to either side of the upright joint, the side's 89 less 5 above and below, in steps of 5
  expect(bookletSaid(flat, ['cutting'])).toMatch(
    /Glue a plate over it, 400 across the joint and 7[5-9] along it,/,
  )
})
