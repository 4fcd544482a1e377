import { truncateSync } from 'node:fs'
import { dirname } from 'node:path'
import { expect, it } from 'vitest'
import { readDesign } from '../../src/design/read.ts'
import { readLaying } from '../../src/job/laying-words.ts'
import { gaugeJob } from '../../src/job/proving/gauge.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { tooManyPages } from '../../src/job/too-many-pages.ts'
import { readLength } from '../../src/length.ts'
import { planSealed } from '../../src/page/set/plan.ts'
import { defaultMargins, paperOf } from '../../src/page/sheet/paper.ts'
import { noCorrection } from '../../src/printer/correction.ts'
import { readReading } from '../../src/printer/reading.ts'
import { BoundedParser } from '../../src/read/bounded-parser.ts'
import { isBounded } from '../../src/read/pdf-bounds.ts'
import { readPlan } from '../../src/read/plan.ts'
import { bytesOf, planOf, useFolder, withPlanText } from '../cli/reprint-run.ts'
import { fingerprint, layOut } from '../support/lay-out.ts'
import { templateText } from '../support/templates.ts'
import { traceply } from '../support/traceply.ts'
import { pageOf } from './pages.ts'

const { file, plot, save } = useFolder()

/** Whether as much is taken; words that only this limit says are looked for where others may speak too. */
type Taken = (amount: number) => boolean | Promise<boolean>

const problems = (text: string): string => {
  const read = readDesign(text)
  return 'problems' in read ? read.problems.map(({ message }) => message).join('\n') : ''
}
const quarter = templateText('quarter-mm')
const sheet = { paper: paperOf('a4'), margins: defaultMargins('a4'), correction: noCorrection }

/** Whether a file of so many kB is read to its end, whatever is then said of it. */
const isRead = async (kilobytes: number, args: (path: string) => readonly string[]): Promise<boolean> => {
  const path = save('large.json', ' '.repeat(kilobytes * 1024))
  const { exit, err } = await traceply(...args(path))
  expect(exit).toBe(1)
  return !/more than \d+ kB, the most of/.test(err)
}

const taken: Readonly<Record<string, Taken>> = {
  'letters of a design file': (n) => !/a design has at most/.test(problems(quarter.padEnd(n, '#'))),
  'a design file, kB': (n) => isRead(n, (path) => ['figures', path]),
  'a profile, kB': (n) => isRead(n, (path) => ['gauge', '--show', 'large', '--profiles', dirname(path)]),
  'a list of points, kB': (n) => isRead(n, (path) => ['fit', path]),
  'ramps of a design': (n) => {
    const more = Array.from({ length: n - 1 }, (_, i) => `  - { name: bay ${i}, like: one }\n`)
    return (
      problems(
        quarter
          .replace('  - kind:', '  - name: one\n    kind:')
          .trimEnd()
          .concat('\n', ...more),
      ) === ''
    )
  },
  'layers of skin': (n) =>
    problems(quarter.replace(/skin: \[.*\]/, `skin: [${Array(n).fill('1 plywood').join(', ')}]`)) === '',
  'lengths of timber or pipe': (n) =>
    problems(quarter.replace('ramps:', `stock: { timber: [${Array(n).fill(2400).join(', ')}] }\nramps:`)) ===
    '',
  'letters of a length': (n) => 'mm' in readLength('640'.padStart(n, '0'), 'mm'),
  'pages to tape': (n) => tooManyPages(n, sheet, 12, 'line', 1) === null,
  'overlap of pages, mm': (n) =>
    !isRefusal(readLaying({ overlap: `${n}` }, null, { units: 'mm', paper: 'a0' })),
  'margin that a printer leaves, mm': (n) =>
    !isRefusal(
      gaugeJob('shed', { across: ['150mm'], down: ['150mm'], margins: `${n}mm, 4mm, 4mm, 4mm` }, 'a4'),
    ),
  'true length of a reading, mm': (n) => !('error' in readReading(`${n}mm/${n}mm`, 150)),
  "size of a set's PDF, MB": async (n) => {
    const path = save('large.pdf', '%PDF-')
    truncateSync(path, n * 1024 * 1024)
    return !(await traceply('reprint', path, '1', '--out', file('x.pdf'))).err.includes(
      'no set has more than',
    )
  },
  'a plan, MB': async (n) => {
    const bytes = bytesOf(await plot('quarter-mm', '--paper', 'a3', '--cover', 'line'))
    const text = JSON.stringify(await planOf(bytes)).padEnd(n * 1024 * 1024)
    const path = save('plan.pdf', await withPlanText(bytes, text))
    return (await traceply('reprint', path, '1', '--out', file('x.pdf'), '--force')).exit === 0
  },
  'pages of a plan': (n) => {
    const { plan } = layOut(quarter, 'a4', 'line')!
    const pages = Array.from({ length: n }, (_, i) => ({ ...plan.pages[0]!, page: i + 1 }))
    return 'plan' in readPlan(JSON.stringify(planSealed({ ...plan, pages }, fingerprint)), fingerprint)
  },
  'parts on a page of a plan': (n) => {
    const { plan } = layOut(quarter, 'a4', 'line')!
    const places = Array(n).fill(plan.pages.find(({ kind }) => kind === 'tile')!.places[0]!)
    const pages = [{ ...plan.pages[0]!, places }, ...plan.pages.slice(1)]
    return 'plan' in readPlan(JSON.stringify(planSealed({ ...plan, pages }, fingerprint)), fingerprint)
  },
  'objects of a PDF': (n) => isBounded(' obj'.repeat(n)),
  'letters of a text in a PDF': async (n) => {
    const text = `%PDF-1.7\n1 0 obj\n(${'x'.repeat(n)})\nendobj\n`
    const parser = new BoundedParser(new TextEncoder().encode(text), {
      inflate: (bytes) => bytes,
      fingerprint,
    })
    await parser.parseDocument().catch(() => undefined)
    return !parser.exceeded
  },
}

const rows = [
  ...pageOf('docs/architecture.md')
    .prose.split('## Limits')[1]!
    .split(/^## /m)[0]!
    .matchAll(/^\| ([^|]+) \| (\d+) \|$/gm),
].map(([, of, most]) => [of!, Number(most)] as const)

it('the table of limits has a test for each', () => {
  expect(rows.map(([of]) => of)).toEqual(Object.keys(taken))
})

it.each(rows)('%s: %d are taken, one more is not', async (of, most) => {
  expect(await taken[of]!(most)).toBe(true)
  expect(await taken[of]!(most + 1)).toBe(false)
})
