import { readFileSync, writeFileSync } from 'node:fs'
import { PNG } from 'pngjs'
import { describe, expect, it } from 'vitest'
import { readPdf } from '../support/read-pdf.ts'
import { traceply } from '../support/traceply.ts'
import { bytesOf, template, useFolder } from './reprint-run.ts'

const { file, list } = useFolder()

const picture = (name: string, ...more: readonly string[]) =>
  traceply('figures', template('pair-mm'), '--picture', file(name), ...more)

describe('traceply figures --picture', () => {
  it('writes the same ramps as SVG, as PNG and on a page, each to scale', async () => {
    for (const name of ['side.svg', 'side.png', 'side.pdf']) {
      const { exit, err } = await picture(name)
      expect([exit, err]).toEqual([0, ''])
    }
    const svg = readFileSync(file('side.svg'), 'utf8')
    const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg)!
    for (const word of ['outer', 'inner', '1382', '51.4°', '1 : 20']) expect(svg).toContain(`>${word}<`)
    // eight dots a mm, nearly all white
    const image = PNG.sync.read(readFileSync(file('side.png')))
    expect([image.width, image.height]).toEqual([
      Math.round(8 * Number(width)),
      Math.round(8 * Number(height)),
    ])
    const dark = image.data.filter((value, i) => i % 4 === 0 && value < 128).length
    expect(dark).toBeGreaterThan(5000)
    expect(dark).toBeLessThan((image.width * image.height) / 5)
    const { pages } = await readPdf(bytesOf(file('side.pdf')))
    expect(pages).toHaveLength(1)
  })

  it('is no file of its text, and leaves no text behind where it cannot be written', async () => {
    for (const more of [[], ['--force']] as const) {
      const { exit, err } = await picture('one.svg', '--out', `${file('.')}/one.svg`, ...more)
      expect([exit, err]).toEqual([
        2,
        `--out and --picture both name ${file('.')}/one.svg; give each its own file\n`,
      ])
    }
    expect((await picture('no/side.svg', '--out', file('side.txt'))).exit).toBe(2)
    expect(list()).toEqual([])
  })

  it('keeps a file that exists, and says which endings there are', async () => {
    await picture('side.svg')
    expect(await picture('side.svg')).toMatchObject({ exit: 2, out: '' })
    expect((await picture('side.svg', '--force')).exit).toBe(0)
    const { exit, err } = await picture('side.jpg')
    expect(exit).toBe(2)
    expect(err).toBe(
      `--picture ${file('side.jpg')}: the name says what is written; end it in .png, .svg or .pdf\n`,
    )
    expect(list()).toEqual(['side.svg'])
  })
})

describe('traceply figures --out', () => {
  it('takes a name that fits what is written', async () => {
    const out = (name: string, ...more: readonly string[]) =>
      traceply('figures', template('quarter-mm'), '--out', file(name), ...more)
    for (const name of ['fig.pdf', 'fig.SVG', 'fig.csv', 'fig.json', 'fig.doc'])
      expect(await out(name)).toEqual({
        exit: 2,
        out: '',
        err: `cannot write ${file(name)}: what is written is plain text; give it a name that ends in .txt\n`,
      })
    expect((await out('fig.txt', '--json')).err).toContain('is JSON; give it a name that ends in .json')
    expect(list().filter((name) => name.startsWith('fig'))).toEqual([])
    expect(await out('fig.json', '--json')).toEqual({
      exit: 0,
      out: `Wrote ${file('fig.json')}.\n`,
      err: '',
    })
  })

  it('says on the terminal too what stops', async () => {
    const path = file('stop.yaml')
    writeFileSync(path, readFileSync(template('quarter-mm'), 'utf8').replace('surface: 1700', 'surface: 500'))
    const { exit, out, err } = await traceply('figures', path, '--out', file('stop.txt'))
    expect([exit, out]).toEqual([1, `Wrote ${file('stop.txt')}.\n`])
    expect(err).toMatch(/^STOP {2}a deck height [\s\S]*\[overhang\]\n/)
    expect(readFileSync(file('stop.txt'), 'utf8')).toContain(err.split('\n')[0])
  })

  it('says of several figures that are found which ramp each is of', async () => {
    const path = file('two.yaml')
    const whole = readFileSync(template('pair-mm'), 'utf8')
    const open = whole.replace('deck: 380 ', 'limits: { length: 1300 }\n    deck: solve ')
    expect(open).not.toBe(whole)
    writeFileSync(path, open)
    const { out } = await traceply('figures', path)
    expect(out).toMatch(/^solved inner: deck \d+ mm: /m)
  })
})
