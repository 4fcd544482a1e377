import { describe, expect, it } from 'vitest'
import type { Pt } from '../../support/pt.ts'
import type { PdfText } from '../../support/read-page.ts'
import { pathPoints } from '../../support/read-pdf.ts'
import { templates, templateText } from '../../support/templates.ts'
import { plotJob } from '../../tape-up/plot.ts'

/** Whether a point lies in the letters of a text: along its baseline, and up to the height of its capitals. */
const inLetters = ({ x, y, angle, width, size }: PdfText, p: Pt): boolean => {
  const [dx, dy] = [p.x - x, p.y - y]
  const along = dx * Math.cos(angle) + dy * Math.sin(angle)
  const up = dy * Math.cos(angle) - dx * Math.sin(angle)
  return along > 0 && along < width && up > 0 && up < 0.72 * size
}

describe('the words of a joint', () => {
  it.each(templates.flatMap((name) => (['letter', 'a4'] as const).map((paper) => [name, paper] as const)))(
    'are not overrun by the cut line, %s on %s',
    async (name, paper) => {
      let looked = 0
      for (const cover of ['whole', 'line', 'ribbon'] as const) {
        const found = await plotJob({ text: templateText(name), paper, cover })
        if ('stops' in found) throw new Error('the template does not solve')
        for (const page of found.read.pages) {
          const words = page.texts.filter(
            ({ layer, text }) => layer === 'joint' && /^(over|goes under) page/.test(text),
          )
          const cut = page.strokes
            .filter(({ layer }) => layer === 'cut')
            .flatMap(({ path }) => pathPoints(path, 400).flat())
          for (const text of words) {
            expect(
              cut.filter((p) => inLetters(text, p)),
              text.text,
            ).toEqual([])
            looked++
          }
        }
      }
      expect(looked).toBeGreaterThan(20)
    },
  )
})
