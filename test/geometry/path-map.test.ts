import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Affine,
  affineApply,
  affineRotate,
  affineScale,
  affineThen,
  affineTranslate,
} from '../../src/geometry/affine.ts'
import { segmentAt } from '../../src/geometry/at.ts'
import { arcSegment, pathSegments, segmentsPath } from '../../src/geometry/path.ts'
import { pathMap } from '../../src/geometry/path-map.ts'
import { assertNear } from '../support/near.ts'

const number = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true })

const similar = fc
  .tuple(number(-4, 4), number(0.2, 3), fc.boolean(), number(-500, 500), number(-500, 500))
  .map(([angle, scale, mirror, x, y]): Affine => {
    const sized = affineThen(affineScale(mirror ? -scale : scale, scale), affineRotate(angle))
    return affineThen(sized, affineTranslate(x, y))
  })

describe('a path under a map', () => {
  test('has the mapped point of every point of its arcs, mirrored or not', () => {
    fc.assert(
      fc.property(similar, number(-3, 3), number(0.1, 6), fc.boolean(), (map, from, size, back) => {
        const arc = arcSegment({ x: 20, y: -30 }, 150, from, back ? -size : size)
        const [own] = pathSegments(segmentsPath([arc]))
        const [mapped] = pathSegments(pathMap(segmentsPath([arc]), map))
        for (let t = 0; t <= 1; t += 0.125) {
          const [p, q] = [segmentAt(mapped!, t), affineApply(map, segmentAt(own!, t))]
          assertNear(p.x, q.x, 1e-6)
          assertNear(p.y, q.y, 1e-6)
        }
      }),
    )
  })

  test('refuses to make an ellipse of an arc', () => {
    const path = segmentsPath([arcSegment({ x: 0, y: 0 }, 10, 0, 1)])
    expect(() => pathMap(path, affineScale(2, 1))).toThrow(/ellipse/)
    expect(() => pathMap(path, [1, 0, 0.5, 1, 0, 0])).toThrow(/ellipse/)
  })
})
