import { expect, test } from 'vitest'
import { ownSheets } from '../../../src/ramp/skin/own-sheets.ts'
import { solveDesign } from '../../../src/ramp/solve.ts'
import { designOf } from '../../support/design-of.ts'
import { above, below } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import { templates, templateText } from '../../support/templates.ts'

const rampsOf = (text: string) => {
  return solveDesign(designOf(text)).ramps
}

test('each sheet told from its own edges is the layer told from its toe end and the left face, no screw lost', () => {
  let [several, lines, screws] = [0, 0, 0]
  const texts = [
    ...templates.map(templateText),
    // wider than a panel is long: sheets side by side as well
    templateText('quarter-and-flat-mm').replaceAll('width: 1216', 'width: 3000'),
  ]
  for (const text of texts)
    for (const layer of rampsOf(text).flatMap(({ skin }) => skin)) {
      const sheets = ownSheets(layer)
      expect(sheets).toHaveLength(layer.pieces.length * layer.widths.length)
      if (sheets.length > 1) several++
      const back = sheets.flatMap(({ up, across, rows }) =>
        rows.flatMap((row) => row.across.map((x) => [row.at + up.from, x + across.from] as const)),
      )
      const whole = layer.rows.flatMap(({ at, across }) => across.map((x) => [at, x] as const))
      expect(back).toHaveLength(whole.length)
      for (const [at, x] of whole) below(Math.min(...back.map(([y, z]) => Math.hypot(at - y, x - z))), 1e-9)
      screws += back.length
      for (const { up, across, marks, rows } of sheets) {
        for (const { of, at } of marks) {
          lines++
          assertNear(up.from + at, layer.marks[of]!, 1e-9)
        }
        for (const row of rows)
          for (const [on, far] of [
            [row.at, up.length],
            ...row.across.map((x) => [x, across.length] as const),
          ] as const) {
            above(on, 0)
            below(on, far)
          }
      }
    }
  expect(several).toBeGreaterThan(6)
  expect(lines).toBeGreaterThan(100)
  expect(screws).toBeGreaterThan(1000)
})
