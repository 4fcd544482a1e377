import { describe, expect, it } from 'vitest'
import { covers } from '../../../src/page/cover/cover.ts'
import { above } from '../../support/hold.ts'
import { layOut } from '../../support/lay-out.ts'
import { templates, templateText } from '../../support/templates.ts'

/** The half circle of a pair mark, and the ring round a screw, mm. */
const [pair, ring] = [5, 2]

describe.each(templates)('%s: what tells two pages of a joint', (name) => {
  it.each(['letter', 'a4'] as const)('has no screw of a timber on it, on %s', (paper) => {
    let met = 0
    for (const cover of covers) {
      const set = layOut(templateText(name), paper, cover)!
      for (const { pattern, tiles } of set.groups)
        for (const { joints } of tiles)
          for (const joint of joints) {
            met++
            // in a crowded corner they may touch
            for (const at of pattern.screws.flatMap(({ middles }) => middles))
              above(
                Math.hypot(at.x - joint.pair.x, at.y - joint.pair.y),
                pair + ring - 1,
                `${cover} joint with ${joint.neighbour}`,
              )
          }
    }
    expect(met).toBeGreaterThan(10)
  })
})
