import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { templates, templateText } from '../support/templates.ts'
import { figuresOf, traceply } from '../support/traceply.ts'

const architecture = readFileSync(new URL('../../docs/architecture.md', import.meta.url), 'utf8')
const section = architecture.split('### The figures\n')[1]!.split(/\n#+ /)[0]!
/** every name in the table */
const told = new Set([...section.matchAll(/`(\w+)(?:\[\])?`/g)].map((match) => match[1]!))

/** Names of all keys of a value, its parts' too. */
const keysOf = (value: unknown): readonly string[] =>
  Array.isArray(value)
    ? value.flatMap(keysOf)
    : value !== null && typeof value === 'object'
      ? Object.entries(value).flatMap(([key, part]) => [key, ...keysOf(part)])
      : []

it('the architecture tells every field of the figures, and none that no design has', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'traceply-fields-'))
  try {
    // sheets that meet both ways, on a thin stud and its twin
    const wide = join(folder, 'wide.yaml')
    writeFileSync(
      wide,
      templateText('quarter-mm')
        .replace('deck: 640', 'deck: 1000')
        .replace('surface: 1700', 'surface: 2400')
        .replace('width: 1216', 'width: 3000')
        .replace('section: 38 x 89', 'section: 25 x 89'),
    )
    // a figure that is left to the program
    const open = join(folder, 'open.yaml')
    writeFileSync(
      open,
      `${templateText('quarter-mm').replace('deck: 500 ', 'deck: solve ')}    limits: { length: 1300, paper: 8 }\n`,
    )
    // on wheels, in a garage, with a price
    const rolling = join(folder, 'rolling.yaml')
    writeFileSync(
      rolling,
      `space: { garage: 3000 x 6000 }\nprices: { pipe: 31 EUR }\n${templateText('quarter-mm').replace('leg: 120', 'leg: 180')}    wheels: { diameter: 75, height: 100 }\n`,
    )
    // a side that no panel holds whole
    const long = join(folder, 'long.yaml')
    writeFileSync(long, templateText('quarter-mm').replace('deck: 500 ', 'deck: 2200 '))
    const files = [...templates.map((name) => `templates/${name}.yaml`), open, rolling, long, wide]
    const all = await Promise.all(
      files.map(async (file) => JSON.parse((await figuresOf(file, '--json')).out)),
    )
    const cut = await traceply(
      ...['figures', 'templates/quarter-mm.yaml', '--as-cut', 'along=26,down=42', '--json'],
    )
    const keys = new Set([...all, JSON.parse(cut.out)].flatMap(keysOf))
    expect([...keys].filter((key) => !told.has(key))).toEqual([])
    const words = 'stop warn note stud seam between side rip cross past before saw'
    const values = new Set(words.split(' '))
    expect([...told].filter((name) => !keys.has(name) && !values.has(name))).toEqual([])
    expect(all.at(-1).ramps[0].skin[0].seams[0].second).not.toBeNull()
  } finally {
    rmSync(folder, { recursive: true })
  }
})
