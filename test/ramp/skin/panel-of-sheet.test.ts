import { expect, test } from 'vitest'
import { solveDesign } from '../../../src/ramp/solve.ts'
import { layPanels } from '../../../src/stock/panel/panels.ts'
import { partsOf } from '../../../src/stock/parts.ts'
import { designOf } from '../../support/design-of.ts'
import { assertNear } from '../../support/near.ts'
import { templateText } from '../../support/templates.ts'

/** The sheets of each part, and what no panel holds; `panels` as they are typed under `stock`. */
const laid = (text: string, panels: string) => {
  const design = designOf(text.replace(/^ramps:/m, `stock: { panels: [${panels}] }\nramps:`))
  const solved = solveDesign(design)
  const lost = layPanels(design, partsOf(design, solved).sheets).flatMap((sheet) => sheet.lost)
  return { ramps: solved.ramps, checks: solved.checks, lost }
}

test('each layer and the deck board are laid in sheets of their own panels', () => {
  const { ramps, checks, lost } = laid(
    templateText('quarter-mm').replace('width: 1216', 'width: 2436'),
    '{ sheet: 6 hardboard, size: 610 x 1220 }, { sheet: 9 plywood, size: 1525 x 3050 }, { sheet: 15 plywood, size: 1220 x 2000 }',
  )
  const [ramp] = ramps
  const layers = ramp!.skin.map(({ sheet, pieces, widths }) => ({ sheet, pieces, widths }))
  expect(layers.map(({ sheet }) => sheet.material)).toContain('hardboard')
  for (const { sheet, pieces, widths } of layers) {
    // 2436 wide: one sheet of 3050; two of 1220 with a gap of 3 between them leave 2443
    const [short, long, across] = sheet.material === 'hardboard' ? [610, 1220, 2] : [1525, 3050, 1]
    expect(widths).toHaveLength(across)
    expect(Math.max(...pieces.map(({ length }) => length))).toBeLessThanOrEqual(short + 1e-6)
    expect(Math.max(...widths.map(({ length }) => length))).toBeLessThanOrEqual(long + 1e-6)
  }
  const plywood = layers.filter(({ sheet }) => sheet.material === 'plywood')
  expect(plywood.length).toBeGreaterThan(0)
  for (const { pieces, widths } of plywood) {
    expect(pieces).toHaveLength(1)
    assertNear(widths[0]!.length, 2436, 1e-6)
  }
  expect(ramp!.deckBoard!.widths).toHaveLength(2)
  expect(lost).toEqual([])
  const across = checks.find(({ id }) => id === 'seam-across')
  expect(across?.message).toContain('sheets reach 1220 mm and 2000 mm across')
})

test('the sheets of a flat are laid on their own panels too', () => {
  const { ramps, lost } = laid(
    templateText('quarter-and-flat-mm'),
    '{ sheet: 6 hardboard, size: 610 x 1220 }',
  )
  const flat = ramps.find(({ kind }) => kind === 'flat')!
  const hard = flat.skin.find(({ sheet }) => sheet.material === 'hardboard')!
  for (const { length } of [...hard.pieces, ...hard.widths]) expect(length).toBeLessThanOrEqual(1220 + 1e-6)
  expect(hard.pieces.length * hard.widths.length).toBeGreaterThanOrEqual(4)
  expect(lost).toEqual([])
})

test('a seam across is told in inches where it is drawn: half a gap of 1/8 past a sheet of 60', () => {
  const text = templateText('quarter-in').replace(/^( +)width: \S+/m, '$1width: 71')
  const { checks } = laid(
    text,
    '{ sheet: 3/8 plywood, size: 48 x 60 }, { sheet: 1/4 hardboard, size: 48 x 60 }',
  )
  const across = checks.find(({ id }) => id === 'seam-across')
  expect(across?.message).toContain('60 1/16 in from the left')
})
