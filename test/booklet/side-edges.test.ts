import { expect, test } from 'vitest'
import { sideEdges } from '../../src/booklet/cuts/side-edges.ts'
import { editDesign } from '../../src/design/edit.ts'
import { readDesign } from '../../src/design/read.ts'
import { pathSegments } from '../../src/geometry/path.ts'
import { cutsJob } from '../../src/job/cuts.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { templates, templateText } from '../support/templates.ts'

const sidesOf = (text: string) => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(reading.problems[0]!.message)
  const job = cutsJob(reading.design)
  if (isRefusal(job)) throw new Error('refused')
  return job.sheets.flatMap(({ panels }) =>
    panels.flatMap((panel) =>
      panel.pieces
        .filter(({ second }) => second !== null)
        .filter(({ part: { part } }) => part === 'side' || part === 'rib')
        .map((piece) => ({ piece, panel, edges: sideEdges(piece, panel, reading.design.units) })),
    ),
  )
}
const spliced = editDesign(templateText('quarter-mm'), 'stock', '{ panel: 800 x 1000 }')

test.each([
  ...templates.map((name) => [name, templateText(name)] as const),
  ['a ramp with sides in pieces', spliced] as const,
])('of %s every long straight edge of a side is sawn, or lies on the edge of the panel', (_, text) => {
  const sides = sidesOf(text)
  expect(sides.length).toBeGreaterThan(1)
  for (const { piece, panel, edges } of sides) {
    const [wide, long] = panel.size
    const straight = pathSegments(piece.outline).filter(
      ({ kind, from, to }) =>
        kind === 'line' &&
        // a circular saw is not set up for less
        Math.hypot(to.x - from.x, to.y - from.y) >= 150 &&
        [(p: typeof from) => Math.min(p.x, long - p.x), (p: typeof from) => Math.min(p.y, wide - p.y)].every(
          (off) => Math.max(off(from), off(to)) > 0.5,
        ),
    )
    // the last is for the jigsaw
    expect(
      edges.slice(0, -1),
      `${piece.part.mark} ${edges.map(({ words }) => words).join('; ')}`,
    ).toHaveLength(straight.length)
  }
})

test('both hands of a piece are sawn along the same edges, and a joint is called one', () => {
  const namesOf = (mark: string): readonly string[] =>
    sidesOf(spliced)
      .find(({ piece }) => piece.part.mark === mark)!
      .edges.map(({ words }) => words.replace(/[,;(].*| cut.*/, '').trim())
  expect(namesOf('S1a')).toEqual(namesOf('S2a'))
  expect(namesOf('S1b')).toEqual(namesOf('S2b'))
  expect(namesOf('S1a')).toContain('joint')
  expect(namesOf('S2b')).toEqual([
    'bottom edge',
    'cut of the back corner',
    'back edge',
    'top line',
    'joint',
    'notch and curve: jigsaw',
  ])
})
