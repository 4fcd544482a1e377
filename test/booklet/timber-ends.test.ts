import { expect, test } from 'vitest'
import { commonEnds, endWords } from '../../src/booklet/book/end-words.ts'
import { stumpView } from '../../src/booklet/views/acts/act-views.ts'
import { drawingBounds } from '../../src/drawing/drawing-bounds.ts'
import { templateText } from '../support/templates.ts'
import { doubtful } from './said.ts'
import { withOffsets } from './solved.ts'

const show = (mm: number): string => mm.toFixed(0)

test.each([
  ['square timber', doubtful],
  ['quarter-mm', templateText('quarter-mm')],
])('%s: the screws in the picture of the ends lie where the words beside it say', (_, text) => {
  const { solved } = withOffsets(text)
  const said = endWords({ show }, solved.ramps[0]!)
  const ends = commonEnds({ show, solved })
  expect(ends.map(({ lies }) => lies)).toEqual(['edge', 'flat'])
  const { parts } = stumpView(ends)
  const marks = (part: string) => parts.find((one) => one.name === part)!.marks
  ends.forEach(({ lies, width }, i) => {
    const timber = drawingBounds([marks('timbers')[i]!])!
    const ratio = (timber.x1 - timber.x0) / width
    const crosses = [0, 1].map((k) => drawingBounds(marks('screws').slice(4 * i + 2 * k, 4 * i + 2 * k + 2))!)
    const drawn = crosses
      .map(({ x0, x1, y0, y1 }) => ({
        aside: ((x0 + x1) / 2 - (timber.x0 + timber.x1) / 2) / ratio,
        down: (timber.y1 - (y0 + y1) / 2) / ratio,
      }))
      .sort((a, b) => a.aside - b.aside || a.down - b.down)
    const words = said.find((one) => one.startsWith(lies === 'edge' ? 'on edge: ' : 'lying flat: '))!
    const aside = /(\d+) to either side/.exec(words)
    const off = /(\d+) off either edge/.exec(words)
    const downs = /(\d+)(?: and (\d+))? below/.exec(words)
    const far = aside ? Number(aside[1]) : off ? width / 2 - Number(off[1]) : 0
    // the words are whole millimetres, the lines of a picture as wide as they are
    expect(Math.abs(drawn[0]!.aside + far)).toBeLessThan(1)
    expect(Math.abs(drawn[1]!.aside - far)).toBeLessThan(1)
    if (downs) {
      expect(Math.abs(drawn[0]!.down - Number(downs[1]))).toBeLessThan(1.5)
      expect(Math.abs(drawn[1]!.down - Number(downs[2] ?? downs[1]))).toBeLessThan(1.5)
    }
  })
})
