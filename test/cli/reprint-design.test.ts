import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { templates } from '../support/templates.ts'
import { traceply } from '../support/traceply.ts'
import { bytesOf, planOf, rawContents, template, useFolder } from './reprint-run.ts'

const { file, plot, refused, reprint, save } = useFolder()

const options: readonly { readonly said: readonly string[] }[] = [
  { said: [] },
  { said: ['--cover', 'line', '--paper', 'letter'] },
  {
    said: [
      '--cover',
      'whole',
      '--paper',
      'a3',
      '--margin',
      '14mm, 9mm, 11mm, 12mm',
      '--overlap',
      '20mm',
      '--strips',
    ],
  },
]

describe.each(templates)('the set of %s laid out again from its design', (name) => {
  it.each(options)('$said: the same file as from its PDF', async ({ said }) => {
    const path = await plot(name, ...said)
    const { set, pages } = await planOf(bytesOf(path))
    const asked = ['map', 'square', '2', ...(said.includes('--strips') ? ['strips'] : [])]
    const fromPdf = await reprint(path, ...asked)
    const fromDesign = await reprint(template(name), '--set', set, ...asked, ...said)
    expect(Buffer.from(fromDesign).equals(Buffer.from(fromPdf))).toBe(true)
    // and so each content is that of the set
    const contents = await rawContents(bytesOf(path))
    const { reprint: held } = await planOf(fromDesign)
    expect(await rawContents(fromDesign)).toEqual(held.map((page: number) => contents[page - 1]))
    expect(held.length).toBeGreaterThanOrEqual(3)
    expect(held.length).toBeLessThan(pages.length)
  })
})

describe('a code that does not come out', () => {
  const text = readFileSync(template('quarter-mm'), 'utf8')
  const parts = ['design', 'paper', 'printer'] as const
  const differing = (err: string): readonly string[] =>
    [...err.matchAll(/^ {2}(\w+) differs \(([A-Z0-9]{4}), not ([A-Z0-9]{4})\): it depends on /gm)].map(
      ([, part, ours, theirs]) => {
        expect(ours).not.toBe(theirs)
        return part!
      },
    )

  const gauge = async (name: string, across: string): Promise<void> => {
    const { exit, err } = await traceply(
      'gauge',
      name,
      '--across',
      across,
      '--down',
      '150mm',
      '--profiles',
      file('printers'),
    )
    expect(exit, err).toBe(0)
  }

  it.each([
    ['a toe', 'toe: 40', 'toe: 41'],
    ['a title', /^title: .*$/m, 'title: Another one'],
  ])('names the design where %s is another', async (_, from, to) => {
    const { set } = await planOf(bytesOf(await plot('quarter-mm')))
    const changed = text.replace(from, to)
    expect(changed).not.toBe(text)
    const { exit, err } = await refused(save('changed.yaml', changed), '--set', set, '1')
    expect(exit).toBe(1)
    expect(err).toMatch(
      new RegExp(`^.*changed\\.yaml comes out as set [A-Z2-9-]{14}, not as ${set}; nothing written\n`),
    )
    expect(differing(err)).toEqual(['design'])
    expect(err).toMatch(/depends on what .*changed\.yaml says, not on its comments/)
  })

  it('takes another comment for the same design', async () => {
    const path = await plot('quarter-mm')
    const { set } = await planOf(bytesOf(path))
    const design = save('noted.yaml', `# cut on Sunday\n${text}`)
    const again = await reprint(design, '--set', set.toLowerCase(), '1')
    expect(await rawContents(again)).toEqual(await rawContents(await reprint(path, '1')))
  })

  it.each([
    ['paper', ['--paper', 'letter']],
    ['margins', ['--margin', '11mm']],
    ['overlap', ['--overlap', '13mm']],
    ['cover', ['--cover', 'whole']],
    ['choice of strips', ['--strips']],
    ['choice to pack', ['--pack']],
  ])('names the paper where the %s is another, and says what it is here', async (_, said) => {
    const { set } = await planOf(bytesOf(await plot('quarter-mm', '--cover', 'line')))
    const { exit, err } = await refused(template('quarter-mm'), '--set', set, '1', '--cover', 'line', ...said)
    expect(exit).toBe(1)
    expect(differing(err)).toEqual(['paper'])
    expect(err).toMatch(
      /here (a4|letter), margins [\d., m]+ \(top, right, bottom, left\), overlap 1[23] mm, cover (line|whole), (no strips|--strips), (not packed|--pack);/,
    )
    expect(err).toContain(said.at(-1)!.replace('mm', ' mm'))
  })

  it('names the printer, and comes out with the one it was plotted for', async () => {
    await gauge('study', '149.25mm')
    await gauge('other', '149.25mm')
    await gauge('worse', '148.25mm')
    const printer = (name: string) => ['--printer', name, '--profiles', file('printers')] as const
    const path = await plot('quarter-mm', ...printer('study'))
    const { set } = await planOf(bytesOf(path))
    for (const [said, here] of [
      [[], 'none'],
      [printer('worse'), 'worse'],
      // measured the same, but its name stands on the pages
      [printer('other'), 'other'],
    ] as const) {
      const { exit, err } = await refused(template('quarter-mm'), '--set', set, '1', ...said)
      expect(exit).toBe(1)
      expect(differing(err)).toEqual(['printer'])
      expect(err).toContain(`here ${here}; give --printer as for plot`)
    }
    const again = await reprint(template('quarter-mm'), '--set', set, '1', 'map', ...printer('study'))
    expect(Buffer.from(again).equals(Buffer.from(await reprint(path, '1', 'map')))).toBe(true)
  })

  it('names all that differ', async () => {
    const { set } = await planOf(bytesOf(await plot('quarter-mm')))
    await gauge('study', '149.25mm')
    const said = ['--paper', 'a3', '--printer', 'study', '--profiles', file('printers')]
    const { err } = await refused(template('quarter-in'), '--set', set, '1', ...said)
    expect(differing(err)).toEqual([...parts])
  })

  it.each(['B3', 'ABCD-EFGH', 'ABCD-EFGH-IJKLM', ''])('is refused where %j is none', async (code) => {
    const { exit, err } = await refused(template('quarter-mm'), '--set', code, '1')
    expect(exit).toBe(2)
    expect(err).toBe(`--set ${code}: a set code reads like BCDF-GHJK-2345; it stands on every page\n`)
  })

  it('a PDF takes no --set', async () => {
    expect(await refused(await plot('quarter-mm'), '--set', 'BCDF-GHJK-2345', '1')).toEqual({
      exit: 2,
      err: `--set is for a design file; ${file('quarter-mm.pdf')} is reprinted without it\n`,
    })
  })

  it('a design that cannot be laid out any more tells why', async () => {
    const { set } = await planOf(bytesOf(await plot('quarter-mm')))
    const design = save('overhang.yaml', text.replace(/deck: 640/, 'deck: 2400'))
    const { exit, err } = await refused(design, '--set', set, '1')
    expect(exit).toBe(1)
    expect(err).toMatch(/^STOP /)
    expect(err).toMatch(
      new RegExp(`cannot be laid out any more, so set ${set} was plotted from another; nothing written\n$`),
    )
  })

  it('and an unknown tile is told as from the PDF', async () => {
    const path = await plot('quarter-mm')
    const { set } = await planOf(bytesOf(path))
    expect((await refused(template('quarter-mm'), '--set', set, 'Q9')).err).toBe(
      (await refused(path, 'Q9')).err,
    )
  })
})
