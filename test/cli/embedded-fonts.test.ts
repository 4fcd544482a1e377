import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { inflateSync } from 'node:zlib'
import { PDFArray, PDFDict, PDFDocument, PDFName, PDFRawStream } from 'pdf-lib'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { otherFont } from '../support/family.ts'
import { traceply } from '../support/traceply.ts'

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'traceply-fonts-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** Fonts of all pages by name, and whether the file holds each: opened by another library. */
const fontsOf = async (path: string): Promise<ReadonlyMap<string, number>> => {
  const document = await PDFDocument.load(readFileSync(path), { updateMetadata: false })
  const found = new Map<string, number>()
  for (const page of document.getPages()) {
    const fonts = page.node.Resources()?.lookupMaybe(PDFName.of('Font'), PDFDict)
    for (const [, ref] of fonts?.entries() ?? []) {
      const font = document.context.lookup(ref, PDFDict)
      const kin = font.lookupMaybe(PDFName.of('DescendantFonts'), PDFArray)
      const holder = kin ? kin.lookup(0, PDFDict) : font
      const name = font.get(PDFName.of('BaseFont'))!.toString()
      const program = holder
        .lookupMaybe(PDFName.of('FontDescriptor'), PDFDict)
        ?.lookup(PDFName.of('FontFile2'))
      if (!(program instanceof PDFRawStream)) throw new Error(`${path}: ${name} is not in the file`)
      found.set(name, otherFont(inflateSync(program.contents)).unitsPerEm)
    }
  }
  return found
}

const own = ['/TRACEP+Traceply-Bold', '/TRACEP+Traceply-Regular']
const wide = ['/TRACEP+Wide-Bold', '/TRACEP+Wide-Regular']
const starter = readFileSync('templates/quarter-in.yaml', 'utf8')

describe.each([
  ['Low ramp', own],
  ['Łódź', [...own, ...wide]],
])('every font is in the file, title %s', (title, fonts) => {
  test.each(['plot', 'square', 'booklet', 'offsets', 'cuts', 'buy'])('of %s', async (command) => {
    const [design, out] = [join(folder, 'design.yaml'), join(folder, `${command}.pdf`)]
    writeFileSync(design, starter.replace(/^title:.*$/m, `title: ${title}`))
    const from = command === 'square' ? [] : [design]
    const strips = command === 'plot' ? ['--strips'] : []
    expect(await traceply(command, ...from, ...strips, '--out', out, '--force')).toMatchObject({ exit: 0 })
    const found = [...(await fontsOf(out)).keys()].sort()
    for (const name of found) expect(fonts).toContain(name)
    for (const name of own) expect(found).toContain(name)
    // the square carries no title
    if (title === 'Łódź' && command !== 'square') expect(found.length).toBeGreaterThan(own.length)
  })

  test('of a page that is printed again', async () => {
    const [set, out] = [join(folder, 'plot.pdf'), join(folder, 'again.pdf')]
    expect(await traceply('reprint', set, '3', '--out', out, '--force')).toMatchObject({ exit: 0 })
    expect([...(await fontsOf(out)).keys()].sort()).toEqual([...(await fontsOf(set)).keys()].sort())
  })
})
