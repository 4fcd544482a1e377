import { readFileSync } from 'node:fs'
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
