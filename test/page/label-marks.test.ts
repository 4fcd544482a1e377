import { describe, expect, it } from 'vitest'
import { textCorners } from '../../src/drawing/text-box.ts'
import { affineIdentity } from '../../src/geometry/affine.ts'
import { convexContains } from '../../src/geometry/clip.ts'
import { labelMarks } from '../../src/page/label-marks.ts'
import { layOut } from '../support/lay-out.ts'
import { templates, templateText } from '../support/templates.ts'

describe('a timber is named', () => {
  it.each(templates)('whole, within what the page keeps, where a page has room: %s', (name) => {
    let [boxed, timbers] = [0, 0]
    for (const paper of ['letter', 'a4'] as const)
      for (const cover of ['whole', 'line'] as const)
        for (const { tiles, pattern } of layOut(templateText(name), paper, cover)!.groups) {
          const named = new Set<string>()
          for (const tile of tiles)
            for (const label of pattern.labels) {
              const marks = labelMarks([label], tile)
              const words = marks.find((mark) => mark.kind === 'text')
              if (words?.kind !== 'text') continue
              named.add(label.words)
              // one that lies across a joint has its words alone, moved into the page
              if (marks.length === 1) continue
              const corners = textCorners(words, affineIdentity)
              for (const corner of corners) expect(convexContains(tile.cell, corner), label.words).toBe(true)
              boxed++
            }
          // with the whole outline every timber lies on paper
          if (cover === 'whole') {
            expect([...named].sort()).toEqual(pattern.labels.map(({ words }) => words).sort())
            timbers += named.size
          }
        }
    expect(boxed).toBeGreaterThan(20)
    expect(timbers).toBeGreaterThan(10)
  })
})
