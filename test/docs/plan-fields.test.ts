import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { planRecorrected } from '../../src/page/set/plan.ts'
import { noCorrection } from '../../src/printer/correction.ts'
import { printerUncertainty } from '../../src/printer/uncertainty.ts'
import { fingerprint, layOut } from '../support/lay-out.ts'
import { templateText } from '../support/templates.ts'

const architecture = readFileSync(new URL('../../docs/architecture.md', import.meta.url), 'utf8')

/** Names in the first column of the table under "### The plan". */
const told = [
  ...architecture
    .split('### The plan\n')[1]!
    .split(/\n#+ /)[0]!
    .matchAll(/^\| `(\w+)` \|/gm),
].map((match) => match[1]!)

it('the architecture tells every field of a plan, in the order of the file, and `reprint` before the seal', () => {
  const { plan } = layOut(templateText('quarter-mm'), 'a4', 'line')!
  const fields = Object.keys(plan)
  expect(told).toEqual([...fields.slice(0, -1), 'reprint', fields.at(-1)!])
})

it('a plan that was corrected again has no other field', () => {
  const { plan } = layOut(templateText('quarter-mm'), 'a4', 'line')!
  const again = planRecorrected(
    plan,
    { name: 'study', correction: noCorrection, uncertainty: printerUncertainty(null) },
    fingerprint,
  )
  expect(Object.keys(again).sort()).toEqual(Object.keys(plan).sort())
})
