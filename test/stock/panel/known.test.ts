import { expect, test } from 'vitest'
import { editDesign } from '../../../src/design/edit.ts'
import { drawDesign } from '../../../src/ramp/solve.ts'
import { nothingKnown } from '../../../src/stock/panel/known.ts'
import { layPanels } from '../../../src/stock/panel/panels.ts'
import { partsOf } from '../../../src/stock/parts.ts'
import { designOf } from '../../support/design-of.ts'
import { templateText } from '../../support/templates.ts'

test('what one layout found changes none of the next: heights, kerf and trim of three designs', () => {
  const known = nothingKnown()
  let pieces = 0
  // the last ones' sides are tried askew
  for (const [name, ramp, deck, heights] of [
    ['pair-mm', 0, '300 mm', ['640 mm', '660 mm', '820 mm', '860 mm']],
    ['quarter-and-flat-mm', 1, '500 mm', ['700 mm', '720 mm']],
    ['quarter-mm', 0, '1000 mm', ['900 mm', '950 mm', '1000 mm']],
  ] as const)
    for (const height of heights)
      for (const [kerf, trim] of [
        ['3 mm', '5 mm'],
        ['6 mm', '5 mm'],
        ['3 mm', '0 mm'],
      ] as const) {
        const text = editDesign(
          editDesign(templateText(name), `ramps.${ramp}.height.deck`, height),
          `ramps.${ramp}.deck`,
          deck,
        )
        const design = designOf(editDesign(editDesign(text, 'stock.kerf', kerf), 'stock.trim', trim))
        const { sheets } = partsOf(design, drawDesign(design))
        const laid = layPanels(design, sheets, known)
        expect(laid).toEqual(layPanels(design, sheets))
        pieces += laid.reduce(
          (sum, { panels }) => sum + panels.reduce((all, own) => all + own.pieces.length, 0),
          0,
        )
      }
  expect(pieces).toBeGreaterThan(150)
  // of all that is handed on something was
  expect(Object.values(known).map(({ size }) => size > 2)).toEqual([true, true, true])
})
