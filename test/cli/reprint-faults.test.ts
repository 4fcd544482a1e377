import { mkdirSync, symlinkSync } from 'node:fs'
import { basename, join } from 'node:path'
import { deflateSync, inflateSync } from 'node:zlib'
import {
  type PDFArray,
  PDFDict,
  PDFDocument,
  PDFName,
  PDFNumber,
  type PDFPage,
  PDFRawStream,
  type PDFRef,
  PDFString,
} from 'pdf-lib'
import { describe, expect, it } from 'vitest'
import { readPdf } from '../support/read-pdf.ts'
import { traceply } from '../support/traceply.ts'
import {
  bytesOf,
  planOf,
  rawContents,
  template,
  useFolder,
  withCatalog,
  withPlanText,
} from './reprint-run.ts'

const { file, list, plot, refused, reprint, save } = useFolder()
const small = ['--paper', 'a3', '--cover', 'line'] as const

it('looks at what it reads before what is there', async () => {
  const kept = save('kept.pdf', '')
  const without = await traceply('reprint', template('quarter-mm'), '3', '--out', kept)
  expect(without.err).toContain('--set')
  expect(without.err).not.toContain('exists and is kept')
  const code = ['--set', 'BCDF-GHJK-2345', '--out', kept] as const
  expect((await traceply('reprint', file('no.yaml'), '3', ...code)).err).toMatch(/^cannot read /)
  expect((await traceply('reprint', template('quarter-mm'), '3', ...code)).err).toContain(
    'exists and is kept',
  )
})

describe('a torn PDF writes nothing:', () => {
  it('cut at every 1/50 of its length, and a byte before its end', async () => {
    const bytes = bytesOf(await plot('quarter-mm', ...small))
    const cuts = [
      ...Array.from({ length: 50 }, (_, k) => Math.floor((bytes.length * k) / 50)),
      bytes.length - 1,
    ]
    for (const at of cuts) {
      const { exit, err } = await refused(save('torn.pdf', bytes.slice(0, at)), '1')
      expect(exit, `cut at ${at}`).toBe(1)
      expect(err, `cut at ${at}`).toMatch(
        at === 0 ? /torn\.pdf is empty; take/ : /torn\.pdf is torn or damaged: .*; nothing written\n$/,
      )
    }
  })

  it('with a piece of its middle lost', async () => {
    const bytes = bytesOf(await plot('quarter-mm', ...small))
    for (let k = 1; k < 20; k++) {
      const from = Math.floor((bytes.length * k) / 20)
      const hole = Buffer.concat([bytes.slice(0, from - 40), bytes.slice(from)])
      const { exit, err } = await refused(save('torn.pdf', hole), '1')
      expect(exit, `hole before ${from}`).toBe(1)
      expect(err).toMatch(/torn or damaged/)
    }
  })

  it('with bytes altered in the page that is asked for', async () => {
    const path = await plot('quarter-mm', ...small)
    const bytes = bytesOf(path)
    const doc = await PDFDocument.load(bytes, { updateMetadata: false })
    const plan = await planOf(bytes)
    const first = plan.pages.find((page: { kind: string }) => page.kind === 'tile').page
    const stream = doc.getPage(first - 1).node.Contents() as unknown as { contents: Uint8Array }
    const at = Buffer.from(bytes).indexOf(stream.contents)
    expect(at).toBeGreaterThan(0)
    for (let k = 1; k < 20; k++) {
      const altered = bytes.slice()
      altered[at + Math.floor((stream.contents.length * k) / 20)]! ^= 0x55
      const { exit, err } = await refused(save('torn.pdf', altered), '1')
      expect(exit).toBe(1)
      expect(err).toMatch(/torn or damaged/)
      // the other pages are whole
      expect((await reprint(file('torn.pdf'), 'map')).length).toBeGreaterThan(1000)
    }
  })
})

describe('a plan that is not the one that was written:', () => {
  it.each([
    'set',
    'paper',
    'margins',
    'overlap',
    'cover',
    'printer',
    'correction',
    'expected',
    'design',
    'pages',
    'seal',
  ])('%s edited by hand', async (key) => {
    const bytes = bytesOf(await plot('quarter-mm', ...small))
    const plan = await planOf(bytes)
    expect(plan).toHaveProperty(key)
    const edits = [
      JSON.stringify({ ...plan, [key]: edited(plan[key]) }),
      JSON.stringify(plan, (name, value) => (name === key ? undefined : value)),
    ]
    for (const text of edits) {
      const { exit, err } = await refused(save('edited.pdf', await withPlanText(bytes, text)), '1')
      expect(exit).toBe(1)
      expect(err).toMatch(
        /the plan in .*edited\.pdf is not the one that plot wrote: its seal does not match, it was edited since; .*; nothing written\n$/,
      )
    }
  })

  it('pages of a reprint renamed', async () => {
    const bytes = await reprint(await plot('quarter-mm', ...small), '1', '2')
    const plan = await planOf(bytes)
    const swapped = JSON.stringify({ ...plan, reprint: [...plan.reprint].reverse() })
    expect((await refused(save('edited.pdf', await withPlanText(bytes, swapped)), '1')).err).toMatch(
      /was edited/,
    )
  })

  it('but white space is no edit', async () => {
    const bytes = bytesOf(await plot('quarter-mm', ...small))
    const spaced = JSON.stringify(await planOf(bytes), null, 4)
    const path = save('spaced.pdf', await withPlanText(bytes, spaced))
    expect((await planOf(await reprint(path, '1'))).pages).toEqual((await planOf(bytes)).pages)
  })

  it.each([2, 17])('version %d', async (version) => {
    const bytes = bytesOf(await plot('quarter-mm', ...small))
    const text = JSON.stringify({ ...(await planOf(bytes)), version })
    const path = save('newer.pdf', await withPlanText(bytes, text))
    expect(await refused(path, '1')).toEqual({
      exit: 1,
      err: `${path} was made by a newer traceply (plan version ${version}); install that one; nothing written\n`,
    })
  })

  it.each(['', '{', '[]', 'null', '"plan"', '\ufeff{}'])('the text %s', async (text) => {
    const bytes = bytesOf(await plot('quarter-mm', ...small))
    const { exit, err } = await refused(save('edited.pdf', await withPlanText(bytes, text)), '1')
    expect(exit).toBe(1)
    expect(err).toMatch(/was edited/)
  })
})

/** Another value of the same shape. */
const edited = (value: unknown): unknown =>
  typeof value === 'number'
    ? value + 1
    : typeof value === 'string'
      ? `${value} `
      : value === null
        ? 'workbench'
        : Array.isArray(value)
          ? [edited(value[0]), ...value.slice(1)]
          : Object.fromEntries(
              Object.entries(value as object).map(([key, v], i) => [key, i === 0 ? edited(v) : v]),
            )

describe('a file that is no set:', () => {
  it('no PDF', async () => {
    const path = template('quarter-mm')
    expect(await refused(path, 'B3')).toEqual({
      exit: 1,
      err: `${path} is not a PDF; take the PDF that plot wrote. For a design file add the set's code: --set CODE; nothing written\n`,
    })
  })

  it('a PDF of another program', async () => {
    const doc = await PDFDocument.create()
    doc.addPage([595, 842])
    const { exit, err } = await refused(save('other.pdf', await doc.save()), 'B3')
    expect(exit).toBe(1)
    expect(err).toMatch(/other\.pdf holds no plan of traceply, .*; nothing written\n$/)
  })

  it('another PDF of ours: the offsets', async () => {
    const path = file('offsets.pdf')
    expect((await traceply('offsets', template('quarter-mm'), '--out', path)).exit).toBe(0)
    expect((await refused(path, '1')).err).toMatch(/holds no plan of traceply/)
  })

  it.each([
    ['OCProperties', 'the layers'],
    ['ViewerPreferences', 'the word to the printer not to scale'],
    ['PageLabels', 'the page labels'],
    ['Outlines', 'the bookmarks'],
  ])('saved anew without %s', async (key, what) => {
    const bytes = await withCatalog(bytesOf(await plot('quarter-mm', ...small)), (catalog) => {
      catalog.delete(PDFName.of(key))
    })
    const { exit, err } = await refused(save('anew.pdf', bytes), '1')
    expect(exit).toBe(1)
    expect(err).toContain(`was saved anew by another program, which left out ${what}; `)
  })

  it('saved anew without a page: the others come again, that one is missed', async () => {
    const path = await plot('quarter-mm', ...small)
    const { set } = await planOf(bytesOf(path))
    const whole = await reprint(path, '1')
    const bytes = await withCatalog(bytesOf(path), (_, doc) => doc.removePage(0))
    const anew = save('anew.pdf', bytes)
    expect(await rawContents(await reprint(anew, '1'))).toEqual(await rawContents(whole))
    const { exit, err } = await refused(anew, 'map')
    expect(exit).toBe(1)
    expect(err).toContain(
      `\`map\` is a page of set ${set}, but ${anew} does not hold it any more; take the PDF as plot wrote it\n`,
    )
  })

  it.each<readonly [string, (page: PDFPage) => void]>([
    ['scaled', (page) => page.setSize(595, 842)],
    ['turned', (page) => page.node.set(PDFName.of('Rotate'), PDFNumber.of(90))],
    ['in another unit', (page) => page.node.set(PDFName.of('UserUnit'), PDFNumber.of(2))],
  ])('saved anew with a page %s', async (_, change) => {
    const bytes = bytesOf(await plot('quarter-mm', ...small))
    const one = save('anew.pdf', await withCatalog(bytes, (_, doc) => change(doc.getPage(0))))
    expect((await refused(one, 'map')).err).toContain('does not hold it any more')
    expect((await reprint(one, '1')).length).toBeGreaterThan(1000)
    const all = await withCatalog(bytes, (_, doc) => doc.getPages().forEach(change))
    expect((await refused(save('anew.pdf', all), '1')).err).toContain(
      'which left out the plain form of the pages; ',
    )
  })

  it('saved anew with another word to the printer, or with a layer renamed', async () => {
    const bytes = bytesOf(await plot('quarter-mm', ...small))
    const scaled = await withCatalog(bytes, (catalog) =>
      catalog
        .lookup(PDFName.of('ViewerPreferences'), PDFDict)
        .set(PDFName.of('PrintScaling'), PDFName.of('AppDefault')),
    )
    expect((await refused(save('anew.pdf', scaled), '1')).err).toContain(
      'which left out the word to the printer not to scale; ',
    )
    const renamed = await withCatalog(bytes, (catalog) =>
      (catalog.lookup(PDFName.of('OCProperties'), PDFDict).lookup(PDFName.of('OCGs')) as PDFArray)
        .lookup(0, PDFDict)
        .set(PDFName.of('Name'), PDFString.of('cuts')),
    )
    expect((await refused(save('anew.pdf', renamed), '1')).err).toContain('which left out the layers; ')
  })

  it('locked with a password', async () => {
    const bytes = await withCatalog(bytesOf(await plot('quarter-mm', ...small)), (_, doc) => {
      doc.context.trailerInfo.Encrypt = doc.context.obj({ Filter: 'Standard' })
    })
    expect((await refused(save('locked.pdf', bytes), '1')).err).toContain(
      'locked.pdf is locked with a password or against changes; unlock it, ',
    )
  })

  it('of pages that do not say which they are', async () => {
    const bytes = await withCatalog(bytesOf(await plot('quarter-mm', ...small)), (_, doc) => {
      for (const page of doc.getPages()) {
        const ref = page.node.get(PDFName.of('Contents')) as PDFRef
        const stream = doc.context.lookup(ref) as PDFRawStream
        const drawn = inflateSync(stream.contents).toString('latin1').split('\n').slice(1).join('\n')
        doc.context.assign(
          ref,
          PDFRawStream.of(stream.dict, new Uint8Array(deflateSync(Buffer.from(drawn, 'latin1')))),
        )
      }
    })
    expect((await refused(save('silent.pdf', bytes), '1')).err).toMatch(
      /^the pages of .*silent\.pdf do not say which they are: /,
    )
  })

  it.each([
    ['not there', 'none.pdf', 'there is no such file or folder'],
    ['a folder', 'folder', 'that is a folder; name the PDF in it'],
  ])('%s', async (_, name, why) => {
    mkdirSync(file('folder'))
    expect(await refused(file(name), '1')).toEqual({ exit: 2, err: `cannot read ${file(name)}: ${why}\n` })
  })
})

it('layers that were hidden stay hidden', async () => {
  const hidden = await withCatalog(bytesOf(await plot('quarter-mm', ...small)), (catalog, doc) => {
    const layers = catalog.lookup(PDFName.of('OCProperties'), PDFDict)
    const groups = layers.get(PDFName.of('OCGs'))!
    const first = (doc.context.lookup(groups) as unknown as { get: (i: number) => never }).get(0)
    layers.lookup(PDFName.of('D'), PDFDict).set(PDFName.of('OFF'), doc.context.obj([first]))
    layers.lookup(PDFName.of('D'), PDFDict).delete(PDFName.of('ON'))
  })
  const before = (await readPdf(hidden)).layers
  expect(before.map(({ visible }) => visible)).toEqual([false, true, true, true, true])
  const again = await reprint(save('hidden.pdf', hidden), '1')
  expect((await readPdf(again)).layers).toEqual(before)
})

describe('pages that there are not:', () => {
  const a4 = ['--paper', 'a4', '--cover', 'line'] as const

  /** What stands below each message, from the names of the tiles alone: one pattern of at most nine columns. */
  const below = ({
    pages,
  }: {
    readonly pages: readonly {
      readonly kind: string
      readonly tile?: string
      readonly pattern?: string
      readonly toPattern?: readonly number[]
    }[]
  }) => {
    const tiles = pages.filter(({ kind }) => kind === 'tile')
    // rows are level: a tile's place in the pattern, to the millimetre
    const at = (axis: 4 | 5) => (page: (typeof tiles)[number]) => Math.round(page.toPattern![axis]!)
    const [xs, ys] = ([4, 5] as const).map((axis) => [...new Set(tiles.map(at(axis)))].sort((a, b) => a - b))
    return [
      `${tiles[0]!.pattern}, top row first:`,
      ...ys!
        .toReversed()
        .map((y) =>
          `  ${xs!.map((x) => tiles.find((tile) => at(4)(tile) === x && at(5)(tile) === y)?.tile ?? '.').join('  ')}`.trimEnd(),
        ),
      'other pages: map, square, trial',
      '',
    ].join('\n')
  }

  it('each is named, and the map is shown once', async () => {
    const path = await plot('quarter-mm', ...a4)
    const plan = await planOf(bytesOf(path))
    const { exit, err } = await refused(path, 'Q1', '1', 'squar', '99', '0', 'x\u001b[31m')
    expect(exit).toBe(1)
    expect(err.slice(err.indexOf('\n') + 1)).toBe(
      [
        `there is no page \`squar\` in set ${plan.set}; did you mean square?`,
        `there is no page \`99\` in set ${plan.set}`,
        `there is no page \`0\` in set ${plan.set}`,
        `there is no page \`x?[31m\` in set ${plan.set}`,
        below(plan),
      ].join('\n'),
    )
    expect(err).toMatch(/^there is no page `Q1` in set [A-Z2-9-]{14}\n/)
  })

  it('none is named', async () => {
    const path = await plot('quarter-mm', ...a4)
    const plan = await planOf(bytesOf(path))
    const asked = { exit: 2, err: `say which pages to print again, e.g. 7 or map\n${below(plan)}` }
    expect(await refused(path)).toEqual(asked)
    // nor is the name of what would be written looked at: beside the set it would be that of the set itself
    const design = ['templates/quarter-mm.yaml', '--set', plan.set, ...a4]
    const before = process.cwd()
    process.chdir(file('.'))
    try {
      const [yaml = '', ...options] = design
      for (const args of [['quarter-mm.pdf'], [join(before, yaml), ...options]]) {
        const { exit, err } = await traceply('reprint', ...args)
        expect({ exit, err }).toEqual(asked)
      }
    } finally {
      process.chdir(before)
    }
  })

  it('strips of a set without them', async () => {
    const path = await plot('quarter-mm', ...a4)
    const { exit, err } = await refused(path, 'strips')
    expect(exit).toBe(1)
    expect(err).toMatch(/^there is no page `strips` in set [A-Z2-9-]{14}\n/)
  })

  it('a reprint does not hold them', async () => {
    const path = save('some.pdf', await reprint(await plot('quarter-mm', ...a4), '2', '3'))
    const plan = await planOf(bytesOf(path))
    const absent = (said: string): string =>
      `\`${said}\` is a page of set ${plan.set}, but ${path}, a reprint, does not hold it; take the PDF of the whole set`
    expect(await refused(path, '2', '1', 'map')).toEqual({
      exit: 1,
      err: [absent('1'), absent('map'), below(plan)].join('\n'),
    })
  })

  it('two ramps have a map each', async () => {
    const path = await plot('pair-mm', '--paper', 'a3', '--cover', 'line')
    const { err } = await refused(path, '99')
    expect(err).toMatch(
      /\nouter\/side, top row first:\n( {2}[0-9. ]+\n)+inner\/side, top row first:\n( {2}[0-9. ]+\n)+other/,
    )
  })
})

describe('the command line:', () => {
  it('an --out that is no PDF', async () => {
    const image = file('page.png')
    const { exit, err } = await traceply('reprint', await plot('quarter-mm', ...small), '1', '--out', image)
    expect({ exit, err }).toEqual({
      exit: 2,
      err: `cannot write ${image}: what is written is a PDF; give it a name that ends in .pdf\n`,
    })
  })

  it('without --out the pages lie beside you, named after the set and them; commas part them too', async () => {
    const path = await plot('quarter-mm', ...small)
    const before = process.cwd()
    process.chdir(file('.'))
    try {
      const { exit, err } = await traceply('reprint', path, '1,2', 'map')
      expect({ exit, err }).toEqual({ exit: 0, err: '' })
      const name = `${basename(path, '.pdf')}-1-2-map.pdf`
      expect(list()).toContain(name)
      expect((await planOf(bytesOf(file(name)))).reprint).toHaveLength(3)
    } finally {
      process.chdir(before)
    }
  })

  it('the set itself is never replaced, whatever its path', async () => {
    const path = await plot('quarter-mm', ...small)
    const before = bytesOf(path)
    symlinkSync(path, file('link.pdf'))
    for (const out of [path, file('link.pdf')]) {
      const { exit, err } = await traceply('reprint', path, '1', '--out', out, '--force')
      expect(exit).toBe(2)
      expect(err).toMatch(/: that is the file that is read; choose another name\n$/)
    }
    expect(bytesOf(path)).toEqual(before)
  })

  it('a file that exists is kept without --force', async () => {
    const path = await plot('quarter-mm', ...small)
    const kept = save('kept.pdf', 'kept')
    expect((await traceply('reprint', path, '1', '--out', kept)).exit).toBe(2)
    expect(Buffer.from(bytesOf(kept)).toString()).toBe('kept')
    expect((await traceply('reprint', path, '1', '--out', kept, '--force')).exit).toBe(0)
    expect(list()).toEqual(['kept.pdf', 'quarter-mm.pdf'])
  })

  it('options of the design are refused with a PDF', async () => {
    const path = await plot('quarter-mm', ...small)
    expect(await refused(path, '1', '--paper', 'a4', '--overlap', '20')).toEqual({
      exit: 2,
      err: '--paper, --overlap: only with a design file and --set CODE; a PDF knows how it was plotted\n',
    })
  })

  it('--json prints the plan alone, as it is attached', async () => {
    const path = await plot('quarter-mm', ...small)
    const { exit, out } = await traceply('reprint', path, '1', '--out', file('one.pdf'), '--json')
    expect(exit).toBe(0)
    expect(JSON.parse(out)).toEqual(await planOf(bytesOf(file('one.pdf'))))
  })

  it('says what was written', async () => {
    const path = await plot('quarter-mm', '--paper', 'a4', '--cover', 'line')
    const { set } = await planOf(bytesOf(path))
    const { out, err } = await traceply('reprint', path, '3', '1', '--out', file('two.pdf'))
    expect(err).toBe('')
    const print = 'Print at 100 %, never "fit to page", one-sided, on the printer that printed the set'
    expect(out).toBe(
      `${file('two.pdf')}: 2 pages of set ${set} on a4: 1, 3.\n${print}; tape them where the old pages lay.\n`,
    )
    // only what has its place on the panel is taped there
    for (const [pages, where] of [
      [['3'], '; tape it where the old page lay'],
      [['map', '3'], '; tape those with a number where the old page lay'],
      [['map', '1', '3'], '; tape those with a number where the old pages lay'],
      [['map'], ''],
      [['square', 'trial'], ''],
    ] as const) {
      const said = await traceply('reprint', path, ...pages, '--out', file('two.pdf'), '--force')
      expect(said.out.split('\n').slice(1)).toEqual([`${print}${where}.`, ''])
    }
  })
})
