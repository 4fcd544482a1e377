import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { type PhoneMap, phoneMap } from '../../src/booklet/phone-map.ts'
import type { Drawing } from '../../src/drawing/drawing.ts'
import { type Affine, affineApply, affineIdentity, affineThen } from '../../src/geometry/affine.ts'
import { pointsBounds } from '../../src/geometry/bounds.ts'
import type { Path } from '../../src/geometry/path.ts'
import { pathSample } from '../../src/geometry/sample.ts'
import { type Cover, covers } from '../../src/page/cover/cover.ts'
import type { PageSet } from '../../src/page/set/draft.ts'
import { layOutSet } from '../../src/page/set/set.ts'
import { defaultMargins, defaultOverlap, paperOf } from '../../src/page/sheet/paper.ts'
import { noCorrection } from '../../src/printer/correction.ts'
import { printerUncertainty } from '../../src/printer/uncertainty.ts'
import { opened } from '../support/strokes.ts'
import { templates, templateText } from '../support/templates.ts'
import { withOffsets } from './solved.ts'
import { overlaps, wordsOf } from './words.ts'

interface Line {
  readonly path: Path
  readonly map: Affine
  readonly width: number
}

/** The strokes of a drawing with the map that takes each to the picture. */
const strokesOf = (drawing: Drawing, map: Affine): readonly Line[] =>
  drawing.flatMap((mark): readonly Line[] => {
    if (mark.kind === 'group') return strokesOf(mark.marks, affineThen(mark.map, map))
    return mark.kind === 'stroke' ? [{ path: mark.path, map, width: mark.pen.width }] : []
  })

const mapped = (name: string, cover: Cover) => mappedOf(templateText(name), cover)

const mappedOf = (
  text: string,
  cover: Cover,
  strips = false,
): { readonly map: PhoneMap; readonly set: PageSet } => {
  const { design, solved } = withOffsets(text)
  const set = layOutSet(design, solved, {
    sheet: {
      paper: paperOf(design.paper),
      margins: defaultMargins(design.paper),
      correction: noCorrection,
    },
    overlap: defaultOverlap,
    cover,
    strips,
    text,
    printer: null,
    uncertainty: printerUncertainty(null),
    fingerprint: (words) => createHash('sha256').update(words).digest('hex'),
  })
  return { map: phoneMap(design.title, set, design.units), set }
}

describe.each(templates.flatMap((name) => covers.map((cover) => [name, cover] as const)))(
  'the map of %s, %s',
  (name, cover) => {
    const { map, set } = mapped(name, cover)
    const words = wordsOf(map.drawing)

    it('numbers every tile once, large enough to be read at arm’s length', () => {
      // numbers of steps are 2.5 mm high, those of crosses 2.4
      const numbers = words.filter((w) => /^\d+$/.test(w.text) && ![2.4, 2.5].includes(w.tall))
      const tiles = set.groups.flatMap((group) => group.tiles)
      expect(numbers.map((w) => w.text)).toEqual(tiles.map((tile) => `${tile.number}`))
      for (const number of numbers) expect(number.tall).toBeGreaterThan(1.2)
      // steps and checks: 2.5 mm high on a picture 90 mm wide
      const line = words.find((w) => w.text.startsWith('Saw on'))!
      expect(line.tall / map.width).toBeGreaterThan(1 / 40)
    })

    it('sets all numbers of a picture in one size, on white where the cut line runs', () => {
      // the outlines are drawn with a pen of 0.6 mm
      const lines = strokesOf(map.drawing, affineIdentity).flatMap(({ path, map: own, width }) =>
        width === 0.6 ? pathSample(path, 2).map((p) => affineApply(own, p)) : [],
      )
      expect(lines.length).toBeGreaterThan(500)
      const discs = opened(map.drawing, affineIdentity, 0.05).lines.filter(
        ({ kind, grey }) => kind === 'fill' && grey === 1,
      )
      const numbers = words.filter((w) => /^\d+$/.test(w.text) && ![2.4, 2.5].includes(w.tall))
      for (const { text, box, tall } of numbers) {
        // below the line a digit has nothing
        const foot = box.y1 - tall
        const hit = lines.some((p) => p.x > box.x0 && p.x < box.x1 && p.y > foot && p.y < box.y1)
        const under = discs.some(({ points }) => {
          const disc = pointsBounds(points)
          return disc.x0 < box.x0 && disc.x1 > box.x1 && disc.y0 < foot && disc.y1 > box.y1
        })
        if (hit && !under) throw new Error(`the number ${text} stands on the line`)
      }
      if (set.groups.length === 1) expect(new Set(numbers.map(({ tall }) => tall.toFixed(6))).size).toBe(1)
    })

    it('keeps its words inside the picture and apart from each other', () => {
      for (const { text, box } of words)
        if (!(box.x0 >= 0 && box.x1 <= map.width && box.y0 >= 0 && box.y1 <= map.height))
          throw new Error(`“${text}” leaves the picture`)
      expect(overlaps(words)).toEqual([])
    })

    it('tells every check and every cross', () => {
      const all = words.map((w) => w.text).join(' ')
      for (const { survey, datums } of set.groups) {
        for (const line of survey) expect(all).toContain(line.words)
        for (const datum of datums) expect(all).toContain(`${datum.letter}: `)
      }
      expect(all).toContain(set.code)
      expect(all).not.toMatch(/\bsafe\b|complies/i)
    })
  },
)

it("tells of strips that mark the skin where there are some, not where there is the pipe's alone", () => {
  const text = templateText(templates[0]!)
  const bare = text.replace(/^( +)skin:.*$/m, '$1skin: []')
  const said = (of: string, strips: boolean): readonly [boolean, boolean] => {
    const { map, set } = mappedOf(of, 'whole', strips)
    const words = wordsOf(map.drawing)
      .map((word) => word.text)
      .join(' ')
    return [set.plan.pages.some(({ kind }) => kind === 'strip'), words.includes('mark the skin')]
  }
  expect(said(text, true)).toEqual([true, true])
  expect(said(text, false)).toEqual([false, false])
  expect(said(bare, true)).toEqual([true, false])
})
