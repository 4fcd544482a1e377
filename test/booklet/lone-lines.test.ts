import { expect, test } from 'vitest'
import { bookletJob } from '../../src/job/booklet.ts'
import { usualLaying } from '../../src/job/laying.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { designOf } from '../support/design-of.ts'
import { wordsOf } from './words.ts'

/** What each page says, in one line. */
const pagesSaid = (
  text: string,
  paper: 'a4' | 'letter',
  only: readonly string[] | null,
): readonly string[] => {
  const job = bookletJob(designOf(text), usualLaying(paper), { only, fingerprint: () => '0123456789abcdef' })
  if (isRefusal(job)) throw new Error(JSON.stringify(job))
  return job.pages.map(({ drawing }) =>
    wordsOf(drawing)
      .map(({ text: word }) => word)
      .join(' '),
  )
}

test('no head stands alone over a first layer of a flat that is nearly as high as a page', () => {
  const heights = Array.from({ length: 8 }, (_, i) => 96 + 6 * i)
  for (const length of heights) {
    const flat = `title: Flat
units: in
ramps:
  - name: flat
    kind: flat
    width: 60
    length: ${length}
    height: { surface: 4 1/2 }
    studs: { section: 1 1/2 x 3 1/2, every: 12 }
    skin: [23/32 plywood, 1/4 hardboard]
`
    const [first] = pagesSaid(flat, 'letter', ['skin'])
    expect(first).toContain('Layer 1')
  }
})

test('the last lines of the care stand together', () => {
  const bare = `title: Skinless and boardless
units: in
ramps:
  - width: 36
    height: { frame: 18 }
    transition: { circle: { frame: 60 } }
    toe: 1
    deck: 12
    skin: []
`
  const said = pagesSaid(bare, 'letter', null)
  const last = said.find((page) => page.includes('A high deck can be fallen from'))
  expect(last).toContain('Ride it no more')
  expect(last).toContain('Helmet and pads are on')
})
