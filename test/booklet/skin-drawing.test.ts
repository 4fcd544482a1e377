import { expect, test } from 'vitest'
import { sheetView } from '../../src/booklet/views/sheet-view.ts'
import { bookletJob } from '../../src/job/booklet.ts'
import { usualLaying } from '../../src/job/laying.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { designOf } from '../support/design-of.ts'
import { below, hold } from '../support/hold.ts'
import { randomFrom } from '../support/random.ts'
import { opened } from '../support/strokes.ts'

/** The booklet's part on the skin. */
const skinOf = (text: string) => {
  const job = bookletJob(designOf(text), usualLaying('letter'), {
    only: ['skin'],
    fingerprint: () => '0123456789abcdef',
  })
  if (isRefusal(job)) throw new Error(JSON.stringify(job))
  return job
}

test('the name of a stud stands level with its line on the skin, or has a line to it', () => {
  let [level, lined] = [0, 0]
  for (let seed = 1; seed <= 60; seed++) {
    const next = randomFrom(seed)
    const count = 1 + Math.floor(3 * next())
    const high = 400 + 900 * next()
    const pieces = Array.from({ length: count }, (_, i) => ({ from: i * (high + 3), length: high }))
    const length = count * (high + 3) - 3
    // a stud at either side of each seam, or under it
    const marks = [
      ...pieces
        .slice(1)
        .flatMap(({ from }) => (seed % 2 === 0 ? [from - 1.5] : [from - 12, from + 9]))
        .concat(Array.from({ length: Math.floor(length / 200) }, (_, i) => 40 + 200 * i)),
    ]
      .sort((a, b) => a - b)
      .map((at, i) => ({ at, name: `stud ${i + 1}` }))
    const rows = marks.map(({ at }) => ({ at, across: [30, 500, 970] }))
    const ratio = 1 / (20 + Math.floor(60 * next()))
    const view = sheetView(
      {
        width: 1000,
        pieces,
        widths: [{ from: 0, length: 1000 }],
        marks,
        rows,
        foot: 'toe end',
        names: count > 1 ? pieces.map((_, i) => `K${i + 1}`) : [],
      },
      'mm',
      ratio,
    )
    const { words, lines } = opened(view.parts.find(({ name }) => name === 'lines')!.marks)
    hold(words.length === marks.length)
    for (const { at, name } of marks) {
      const own = words.find(({ text }) => text.replace(', seam', '') === name)!
      const [start, top] = [own.corners[0]!.x, own.corners[3]!.y]
      const middle = top - 1.25
      const joins = (y: number) => (p: { readonly x: number; readonly y: number }) =>
        p.x < start && p.x > start - 3.6 && Math.abs(p.y - y) < 0.11
      // what ends at the name begins at the line's own height
      const strokes = lines.filter(
        ({ points }) => points.some(joins(middle)) && points.some(joins(at * ratio)),
      )
      if (strokes.length > 0) lined++
      else {
        below(Math.abs(middle - at * ratio), 0.11)
        level++
      }
    }
  }
  expect(level).toBeGreaterThan(100)
  expect(lined).toBeGreaterThan(100)
})

test('a drawing of many screws takes the whole width where it would be too small beside its table', () => {
  const job = skinOf(`title: Long shallow bank
units: in
ramps:
  - kind: quarter
    width: 95 1/2
    height: { deck: 18 }
    transition: { circle: { surface: 200 } }
    toe: 1 1/2
    deck: 24
    sides: { thickness: 23/32, count: 3 }
    studs: { section: 1 1/2 x 3 1/2, every: 12 }
    skin: [3/8 plywood, 3/8 plywood, 1/8 steel]
    deck-board: 3/4 plywood
    coping: { outside: 2 3/8, notch: { along: 2 1/4, down: 1 1/2 }, seat: round }
`)
  const scales = job.pages
    .flatMap(({ drawing }) => opened(drawing).words)
    .flatMap(({ text }) => {
      const said = /^(\d+)(?:\/(\d+))? in = 1 ft$/.exec(text)
      return said ? [Number(said[1]) / Number(said[2] ?? 1)] : []
    })
  expect(scales.length).toBeGreaterThanOrEqual(4)
  expect(Math.min(...scales)).toBeGreaterThanOrEqual(1 / 4)
})

test('where a screw of a layer would come through is told before the layer is screwed on', () => {
  const job = skinOf(`title: Many layers
units: mm
ramps:
  - kind: quarter
    width: 1216
    height: { surface: 900 }
    transition: { circle: { surface: 2000 }, tangent: { frame: 0 } }
    toe: 30
    length: 2100
    studs: { section: 95 x 220, every: 300 }
    skin: [6 plywood, 6 plywood, 6 plywood, 2 steel]
    coping: { outside: 60.3, up: 8, out: 6, seat: square }
`)
  const said = job.pages.flatMap(({ drawing }) => opened(drawing).words.map(({ text }) => text))
  const notes = said.filter((words) => /^Layer \d: a screw of/.test(words))
  expect(notes.length).toBeGreaterThan(1)
  for (const note of notes) {
    const layer = note.slice(0, 'Layer 1'.length)
    const bitten = said.findIndex((words) => words.startsWith(`Every screw of ${layer.toLowerCase()} `))
    expect(bitten).toBeGreaterThan(0)
    expect(said.indexOf(note)).toBeLessThan(bitten)
    expect(said.indexOf(note)).toBeGreaterThan(
      said.findIndex((words) => words === layer || words.startsWith(`${layer}, the top`)),
    )
  }
})
