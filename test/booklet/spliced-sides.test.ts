import { expect, test } from 'vitest'
import { laidSides } from '../../src/booklet/book/sections/cutting/copied-sides.ts'
import {
  copiedPieces,
  pagesLieOn,
  splicedSides,
} from '../../src/booklet/book/sections/cutting/spliced-sides.ts'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { pathSample } from '../../src/geometry/sample.ts'
import { cutsJob } from '../../src/job/cuts.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { designOf } from '../support/design-of.ts'
import { bookletSaid } from './said.ts'

const spliced = (count: number): string => `title: Long quarter
units: mm
ramps:
  - kind: quarter
    width: 1800
    height: { deck: 1300 }
    transition: { circle: { surface: 2400 } }
    toe: 40
    deck: 600
    sides: { thickness: 18, count: ${count} }
    skin: [9 plywood, 9 plywood, 6 hardboard]
    run-out: { sheet: 1.5 steel }
    coping: none
`

/** Twice the area of what is traced round, under nought clockwise: a pattern goes round the other way. */
const area = (points: readonly { readonly x: number; readonly y: number }[]): number =>
  points.reduce((sum, p, i) => {
    const q = points[(i + 1) % points.length]!
    return sum + p.x * q.y - q.x * p.y
  }, 0)

test('of sides in pieces the first one lies as the pages do, and each other piece is traced from its like', () => {
  for (const count of [2, 3, 4]) {
    const job = cutsJob(designOf(spliced(count)))
    if (isRefusal(job)) throw new Error(`${count}`)
    const [ramp] = curvedOf(job.solved.ramps)
    const [first, ...others] = splicedSides(job, ramp!)
    expect(others).toHaveLength(count - 1)
    expect(first!.pieces.map(({ piece }) => piece.part.mark)).toEqual([`${first!.mark}a`, `${first!.mark}b`])
    for (const { piece } of first!.pieces) expect(area(pathSample(piece.outline, 40))).toBeGreaterThan(0)
    const said = copiedPieces(first!, laidSides(job, ramp!)).join(' ')
    const [mirrored = '', alike = ''] = [/([^.:]*) are mirror images/, /([^.:]*): lay/].map(
      (words) => words.exec(said)?.[1] ?? '',
    )
    for (const { pieces } of others)
      for (const { piece } of pieces) {
        const turned = area(pathSample(piece.outline, 40)) < 0
        expect(mirrored.includes(piece.part.mark), `${count} ${piece.part.mark}`).toBe(turned)
        expect(alike.includes(piece.part.mark)).toBe(!turned)
      }
    // pages lie print down on what goes round with the clock alone
    for (const side of [
      first!,
      ...others,
      { ...first!, pieces: [first!.pieces[0]!, others[0]!.pieces[1]!] },
    ]) {
      const turned = side.pieces.map(({ piece }) => area(pathSample(piece.outline, 40)) < 0)
      const lie = pagesLieOn(side)
      expect(/print up/.test(lie)).toBe(turned.includes(false))
      expect(/print DOWN/.test(lie)).toBe(turned.includes(true))
    }
    for (const { piece } of first!.pieces) expect(`${mirrored}${alike}`).not.toContain(piece.part.mark)
  }
})

test('a booklet names the side in pieces that the pages show, and the faces that pages and plates come on', () => {
  const [two, three] = [2, 3].map((count) => bookletSaid(spliced(count), ['cutting']))
  for (const said of [two!, three!]) {
    expect(said).toMatch(/They show S2, the (right side|rib): S2a and S2b lie as printed on panel \d/)
    expect(said).toContain('the marks of S2.')
    expect(said).not.toContain('the first side')
    expect(said).toContain('S1a and S1b are mirror images: turn S2a and S2b over')
    expect(said).toMatch(/the side laid on S2: .*On S1 the pages lie print down\./)
  }
  expect(three).toContain('S3a and S3b: lay S2a and S2b on with the same face up')
  expect(three).toContain('On a rib they come on the right face, as seen from the toe')
  expect(three).toContain('print up under the left side and the rib, print down under the right')
  expect(two).not.toContain('On a rib')
})

test('sides that have plates on are drilled outside to outside, and glued where the timber will stand', () => {
  const said = bookletSaid(spliced(3), ['cutting']).replace(/\s+/g, ' ')
  expect(said).toMatch(/Glue the joint at the mark of (stud|timber) \d/)
  expect(said).toContain(
    'Clamp the sides on each other, outside to outside where their insides have plates; drill',
  )
  expect(said).toContain('Sides laid on each other, plates away from each other: curve')
  const whole = bookletSaid(spliced(3).replace('deck: 600', 'deck: 300').replace('deck: 1300', 'deck: 600'), [
    'cutting',
  ])
  expect(whole).not.toContain('Glue a plate')
  expect(whole).toContain('Clamp the sides on each other; drill')
  expect(whole).toContain('Sides laid on each other: curve')
})
