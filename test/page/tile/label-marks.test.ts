import { describe, expect, it } from 'vitest'
import type { Drawing, Mark } from '../../../src/drawing/drawing.ts'
import { textCorners } from '../../../src/drawing/text-box.ts'
import { type Affine, affineApply, affineIdentity, affineThen } from '../../../src/geometry/affine.ts'
import { convexContains } from '../../../src/geometry/clip.ts'
import { pathSample } from '../../../src/geometry/sample.ts'
import { layOut } from '../../support/lay-out.ts'
import { templates, templateText } from '../../support/templates.ts'

interface Pt {
  readonly x: number
  readonly y: number
}

interface Said {
  readonly mark: Extract<Mark, { kind: 'text' }>
  readonly corners: readonly Pt[]
}

/** Words with the corners of their boxes, and strokes as points, on the page. */
const onPage = (drawing: Drawing) => {
  const said: Said[] = []
  const lines: { readonly layer: string; readonly width: number; readonly points: readonly Pt[] }[] = []
  const walk = (marks: Drawing, map: Affine): void => {
    for (const mark of marks)
      if (mark.kind === 'group') walk(mark.marks, affineThen(mark.map, map))
      else if (mark.kind === 'text') said.push({ mark, corners: textCorners(mark, map) })
      else if (mark.kind === 'stroke')
        lines.push({
          layer: mark.layer,
          width: mark.pen.width,
          points: pathSample(mark.path, 0.3).map((p) => affineApply(map, p)),
        })
  }
  walk(drawing, affineIdentity)
  return { said, lines }
}

/** Between the baseline and the top of a capital, a little less on all sides. */
const inBox = ([a, b, , d]: readonly Pt[], p: Pt): boolean => {
  const [wide, high] = [Math.hypot(b!.x - a!.x, b!.y - a!.y), Math.hypot(d!.x - a!.x, d!.y - a!.y)]
  const u = ((p.x - a!.x) * (b!.x - a!.x) + (p.y - a!.y) * (b!.y - a!.y)) / wide
  const v = ((p.x - a!.x) * (d!.x - a!.x) + (p.y - a!.y) * (d!.y - a!.y)) / high
  return u > 0.15 && u < wide - 0.15 && v > (high * 0.3) / 1.3 + 0.15 && v < high - 0.15
}

const overBox = ([a, b, , d]: readonly Pt[]): readonly Pt[] =>
  Array.from({ length: 41 }, (_, i) => i / 40).flatMap((u) =>
    [0.25, 0.5, 0.75, 1].map((v) => ({
      x: a!.x + u * (b!.x - a!.x) + v * (d!.x - a!.x),
      y: a!.y + u * (b!.y - a!.y) + v * (d!.y - a!.y),
    })),
  )

describe.each(templates)('no words of a page of %s', (name) => {
  it.each(['whole', 'line', 'ribbon'] as const)(
    'cover other words, a mark or scale of a joint, a snap line, a cross or the cut line: %s',
    (cover) => {
      let compared = 0
      const covered: string[] = []
      for (const paper of ['letter', 'a4'] as const) {
        const set = layOut(templateText(name), paper, cover)!
        for (const page of set.pages.filter(({ kind }) => kind === 'tile')) {
          const { said, lines } = onPage(page.draw())
          const kept = lines.filter(
            ({ layer, width }) => layer === 'cut' || layer === 'joint' || (layer === 'datum' && width < 0.2),
          )
          said.forEach(({ mark, corners }, i) => {
            const what = `${paper} ${page.label}: ${mark.text}`
            compared += kept.length + said.length - i - 1
            for (const { layer, points } of kept)
              if (points.some((p) => inBox(corners, p))) covered.push(`${what} on ${layer}`)
            for (const other of said.slice(i + 1))
              if (
                overBox(other.corners).some((p) => inBox(corners, p)) ||
                overBox(corners).some((p) => inBox(other.corners, p))
              )
                covered.push(`${what} on ${other.mark.text}`)
          })
        }
      }
      expect(covered).toEqual([])
      expect(compared).toBeGreaterThan(10_000)
    },
  )
})

describe.each(templates)('the timbers of %s', (name) => {
  it('are named whole, within what a page keeps, on some page that shows them', () => {
    let named = 0
    for (const paper of ['letter', 'a4'] as const)
      for (const cover of ['whole', 'line', 'ribbon'] as const) {
        const set = layOut(templateText(name), paper, cover)!
        const drawn = set.plan.pages.map((page, i) => ({ page, ...onPage(set.pages[i]!.draw()) }))
        for (const { tiles, pattern } of set.groups) {
          const words = new Set<string>()
          for (const { page, said } of drawn) {
            const tile = tiles.find((one) => one.name === page.tile)
            if (!tile) continue
            for (const { mark, corners } of said.filter(({ mark }) => /^stud \d/.test(mark.text))) {
              for (const { x, y } of corners)
                expect(
                  convexContains(
                    tile.cell,
                    affineApply(page.toPattern!, { x: (x * 72) / 25.4, y: (y * 72) / 25.4 }),
                  ),
                  mark.text,
                ).toBe(true)
              words.add(mark.text)
              named++
            }
          }
          // a good part of its outline on one page, 60 mm
          const seen = pattern.labels.filter((_, i) =>
            tiles.some(
              (tile) =>
                pathSample(pattern.markPaths[i]!, 1).filter((p) => convexContains(tile.cell, p)).length > 60,
            ),
          )
          for (const label of seen) expect([...words], `${paper} ${cover}`).toContain(label.words)
          if (cover === 'whole') expect(seen.length).toBe(pattern.labels.length)
        }
      }
    expect(named).toBeGreaterThan(20)
  })
})
