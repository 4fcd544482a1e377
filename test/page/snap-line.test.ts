import { describe, expect, it } from 'vitest'
import type { PaperName } from '../../src/design/design.ts'
import { layOut } from '../support/lay-out.ts'
import { templates, templateText } from '../support/templates.ts'

const papers: readonly PaperName[] = ['letter', 'a4', 'tabloid', 'a3']

describe('the snap line of a level row', () => {
  it.each(templates)('lies on the panel, a round height above its bottom edge, %s', (name) => {
    const text = templateText(name)
    const step = /units: in/.test(text) ? 12.7 : 10
    let looked = 0
    for (const paper of papers)
      for (const cover of ['whole', 'line'] as const)
        for (const { tiles, pattern } of layOut(text, paper, cover)!.groups)
          for (const { snap, row } of tiles) {
            const where = `${paper} ${cover} row ${row}`
            const height = snap[0].y
            expect(Math.abs(height / step - Math.round(height / step)) * step, where).toBeLessThan(1e-6)
            expect(height, where).toBeGreaterThanOrEqual(5)
            expect(height, where).toBeLessThanOrEqual(pattern.height - 5)
            looked++
          }
    expect(looked).toBeGreaterThan(30)
  })

  it.each(templates)('keeps off the marks that its joints are read by, %s', (name) => {
    let looked = 0
    for (const paper of papers)
      for (const cover of ['whole', 'line'] as const)
        for (const { tiles } of layOut(templateText(name), paper, cover)!.groups)
          for (const { snap, joints } of tiles)
            for (const joint of joints.filter(({ edge }) => edge === 'left')) {
              const away = (p: { readonly y: number }): number => Math.abs(p.y - snap[0].y)
              expect(Math.min(...joint.crosses.map(away))).toBeGreaterThan(10)
              // half a scale is 9 ticks of 2.0 mm
              expect(Math.min(...joint.verniers.map(away))).toBeGreaterThan(18)
              expect(away(joint.pair)).toBeGreaterThan(6)
              looked++
            }
    expect(looked).toBeGreaterThan(10)
  })
})
