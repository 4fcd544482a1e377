import { describe, expect, it } from 'vitest'
import { kinds } from '../../src/design/design.ts'
import { designFileDoc } from '../../src/design/doc.ts'
import { readDesign, readOpenDesign } from '../../src/design/read.ts'
import { isRamp, type Row, rowKey } from '../../src/design/row.ts'
import { keysUnder, rampPath, rowAt, rowsUnder, schema, solveWord } from '../../src/design/schema.ts'

const designMd = `title units paper stock ramps panel timber pipe kerf name kind width height frame deck surface
  transition circle tangent toe length sides thickness count studs section every foot to skin fasten run-out sheet step-back deck-board
  coping outside material holes ends up out seat notch along down chamfer leg like stores-inside ramp clearance trim panels size clamped good-face offcuts lip limits
  prices space garage door ceiling wheels diameter`

/** A ramp, or an entry of another list: a map without a key of its own. */
const isEntry = (row: Row): boolean => isRamp(row) || row.path.endsWith('[]')

it('has every word of the design file, and no other', () => {
  const words = new Set(schema.filter((row) => row.path !== '' && !isEntry(row)).map(rowKey))
  expect([...words].sort()).toEqual(designMd.split(/\s+/).sort())
})

it('no key twice, no help that is no single line', () => {
  const paths = schema.map((row) => row.path)
  expect(new Set(paths).size).toBe(paths.length)
  for (const row of schema) expect(row.help).toMatch(/^[^\n]{4,80}[^.\n]$/)
})

it('a map is a row itself, and alternatives name keys that it has', () => {
  for (const row of schema) {
    const parent = row.path.replace(/\.?[^.]*$/, '')
    expect(rowAt(parent).value.kind).toMatch(/^map$/)
    if (row.value.kind === 'map')
      for (const { sets } of row.value.alternatives)
        expect(keysUnder(row.path)).toEqual(expect.arrayContaining(sets.flat()))
  }
  expect(() => rowAt('ramps[quarter].colour')).toThrow('the design file has no key ramps[quarter].colour')
})

/** What a ramp must say, and the keys that are tried elsewhere. */
const kindsTried = {
  quarter: {
    must: ['width', 'height', 'transition', 'toe', 'deck', 'skin'],
    others: ['like', 'stores-inside', 'width', 'deck', 'length'],
  },
  flat: { must: ['kind', 'width', 'length', 'height', 'skin'], others: ['like'] },
} as const

describe.each(kinds.flatMap((kind) => (['mm', 'in'] as const).map((units) => [kind, units] as const)))(
  'examples and defaults of a %s in %s',
  (kind, units) => {
    const path = rampPath(kind)
    const { must, others } = kindsTried[kind]
    /** A whole ramp made of the table's own examples; `key` is the one on trial. */
    const base: Record<string, string> = Object.fromEntries(
      must.map((key) => [key, rowAt(`${path}.${key}`).example[units]]),
    )
    const text = (keys: Record<string, string>, top = ''): string =>
      `title: Table\nunits: ${units}\n${top}ramps:\n  - ${Object.entries(keys)
        .map(([key, value]) => `${key}: ${value}`)
        .join('\n    ')}\n`

    it.each(rowsUnder(path).filter((row) => !(others as readonly string[]).includes(rowKey(row))))(
      '$path',
      (row) => {
        const open = ['lip', 'limits'].includes(rowKey(row)) ? { height: '{ frame: solve }' } : {}
        const said = { ...base, ...open, [rowKey(row)]: row.example[units] }
        expect(readOpenDesign(text(said))).toHaveProperty('design')
        for (const word of row.words) {
          const by = word === solveWord ? { limits: rowAt(`${path}.limits`).example[units] } : {}
          expect(readOpenDesign(text({ ...base, ...by, [rowKey(row)]: word }))).toHaveProperty('design')
        }
      },
    )
    it.each(rowsUnder('stock'))('$path', (row) => {
      expect(readDesign(text(base, `stock: { ${rowKey(row)}: ${row.example[units]} }\n`))).toHaveProperty(
        'design',
      )
    })
    it('a default is what one gets by writing it', () => {
      let defaults = 0
      for (const row of rowsUnder(path)) {
        if (row.unsaid.kind !== 'default') continue
        defaults++
        const said = readDesign(text({ ...base, [rowKey(row)]: String(row.unsaid.text[units]) }))
        expect(said).toEqual(readDesign(text(base)))
        expect(said).toHaveProperty('design')
      }
      expect(defaults).toBeGreaterThan(0)
    })
  },
)

it.each(['mm', 'in'] as const)('length in place of deck, in %s', (units) => {
  const keys = ['width', 'height', 'transition', 'toe', 'length', 'skin'].map(
    (key) => `    ${key}: ${rowAt(`ramps[quarter].${key}`).example[units]}\n`,
  )
  const text = `title: Table\nunits: ${units}\nramps:\n  - kind: quarter\n${keys.join('')}`
  expect(readDesign(text)).toHaveProperty('design')
})

describe('docs/design-file.md', () => {
  it('has a line for every key, with its help', () => {
    const lines = designFileDoc().split('\n')
    for (const row of schema.filter((r) => r.path !== '' && !isEntry(r)))
      expect(
        lines.filter((line) => line.startsWith(`| \`${rowKey(row)}\` | ${row.help} |`)),
      ).not.toHaveLength(0)
  })
  it('has tables whose lines are as wide as their heads', () => {
    const cells = (line: string): number => line.split('|').length
    const rows = designFileDoc()
      .split('\n')
      .filter((line) => line.startsWith('|'))
    let head = 0
    for (const [i, line] of rows.entries()) {
      if (rows[i + 1]?.startsWith('|---')) head = cells(line)
      expect(cells(line)).toBe(head)
    }
    expect(rows.length).toBeGreaterThan(schema.length)
  })
})
