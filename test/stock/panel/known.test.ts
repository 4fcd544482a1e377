import { expect, test } from 'vitest'
import { editDesign } from '../../../src/design/edit.ts'
import { readDesign } from '../../../src/design/read.ts'
import { drawDesign } from '../../../src/ramp/solve.ts'
import { nothingKnown } from '../../../src/stock/panel/known.ts'
import { layPanels } from '../../../src/stock/panel/panels.ts'
import { partsOf } from '../../../src/stock/parts.ts'
import { templateText } from '../../support/templates.ts'

const read = (text: string) => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
  return reading.design
}

test('what one layout found changes none of the next: heights, kerf and trim of two ramps', () => {
  const known = nothingKnown()
  let pieces = 0
  for (const [name, path, heights] of [
    ['pair-mm', 'ramps.0.height.frame', ['580 mm', '600 mm', '640 mm']],
    ['quarter-and-flat-mm', 'ramps.1.height.deck', ['700 mm', '720 mm', '760 mm']],
  ] as const)
    for (const height of heights)
      for (const [kerf, trim] of [
        ['3 mm', '5 mm'],
        ['6 mm', '5 mm'],
        ['3 mm', '0 mm'],
      ] as const) {
        const text = editDesign(templateText(name), path, height)
        const design = read(editDesign(editDesign(text, 'stock.kerf', kerf), 'stock.trim', trim))
        const { sheets } = partsOf(design, drawDesign(design))
        const laid = layPanels(design, sheets, known)
        expect(laid).toEqual(layPanels(design, sheets))
        pieces += laid.reduce(
          (sum, { panels }) => sum + panels.reduce((all, own) => all + own.pieces.length, 0),
          0,
        )
      }
  expect(pieces).toBeGreaterThan(150)
  expect(known.ways.size).toBeGreaterThan(20)
})
