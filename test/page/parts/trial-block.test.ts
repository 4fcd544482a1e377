import fc from 'fast-check'
import { expect, it } from 'vitest'
import type { Drawing } from '../../../src/drawing/drawing.ts'
import { textCorners } from '../../../src/drawing/text-box.ts'
import { type Affine, affineApply, affineIdentity, affineThen } from '../../../src/geometry/affine.ts'
import { boxOverlaps, pointsBounds } from '../../../src/geometry/bounds.ts'
import { convexContains } from '../../../src/geometry/clip.ts'
import { convexOverlap } from '../../../src/geometry/overlap.ts'
import type { Point } from '../../../src/geometry/point.ts'
import { pathSample } from '../../../src/geometry/sample.ts'
import { trialBlock } from '../../../src/page/parts/trial-block.ts'
import { drawnTrial } from '../../../src/page/parts/trial-piece.ts'
import { lipTrial } from '../../../src/pattern/lip/lip-trial.ts'
import { sawnSeed, sawnWithPipe, wholeOf } from '../../ramp/ramps.ts'
import { atMost, hold } from '../../support/hold.ts'

interface Flat {
  readonly texts: readonly { readonly words: string; readonly corners: readonly Point[] }[]
  readonly cuts: readonly (readonly Point[])[]
  readonly others: readonly Point[]
}

/** Groups opened. */
const flatten = (drawing: Drawing): Flat => {
  const all = {
    texts: [] as { words: string; corners: readonly Point[] }[],
    cuts: [] as (readonly Point[])[],
    others: [] as Point[],
  }
  const walk = (marks: Drawing, map: Affine): void => {
    for (const mark of marks) {
      if (mark.kind === 'group') walk(mark.marks, affineThen(mark.map, map))
      else if (mark.kind === 'text') all.texts.push({ words: mark.text, corners: textCorners(mark, map) })
      else {
        const points = pathSample(mark.path, 2).map((p) => affineApply(map, p))
        if (mark.layer === 'cut') all.cuts.push(points)
        else all.others.push(...points)
      }
    }
  }
  walk(drawing, affineIdentity)
  return all
}

it('the block of a lip trial holds the piece at its size and all its words, none over another or across the cut line', () => {
  const count = { onWood: 0, below: 0, none: 0 }
  fc.assert(
    fc.property(
      sawnWithPipe,
      fc.constantFrom({ width: 190, height: 271 }, { width: 277, height: 394 }, { width: 130, height: 220 }),
      (design, room) => {
        const trial = lipTrial(wholeOf(design), room.width - 22, room.height - 56, 'mm')
        if (!trial) return
        const block = trialBlock(drawnTrial(trial), 'Boathouse: ramp', 'BCDF-GHJK-2345', room)
        if (!block) {
          count.none++
          return
        }
        const { width, height } = block
        const { piece } = trial
        const [wide, high] = [piece.x1 - piece.x0, piece.y1 - piece.y0]
        expect(Math.min(width - wide, height - high)).toBeGreaterThanOrEqual(-1e-9)
        if (height < high + 8) count.onWood++
        else count.below++
        expect(
          (width <= room.width && height <= room.height) || (height <= room.width && width <= room.height),
        ).toBe(true)
        const { texts, cuts, others } = flatten(block.draw())
        for (const { x, y } of [...cuts.flat(), ...others, ...texts.flatMap(({ corners }) => corners)]) {
          atMost(Math.max(-x, x - width), 0.01, `${x} of ${width}`)
          atMost(Math.max(-y, y - height), 0.01, `${y} of ${height}`)
        }
        const said = texts.map(({ words }) => words).join(' ')
        for (const step of trial.steps) expect(said).toContain(step)
        expect(said).toContain('set BCDF-GHJK-2345')
        // labels of layers and one KEEP lie along the curve; all other words are level or upright, so that their boxes are plain
        const isSlanted = ({ corners: [a, b] }: (typeof texts)[number]): boolean =>
          Math.min(Math.abs(b!.x - a!.x), Math.abs(b!.y - a!.y)) > 1e-6
        const words = texts.filter(
          (one) => !/^layer \d: /.test(one.words) && !(one.words === 'KEEP' && isSlanted(one)),
        )
        for (const keep of texts.filter((one) => one.words === 'KEEP' && isSlanted(one))) {
          for (const p of cuts.flat()) hold(!convexContains(keep.corners, p), 'the cut line through KEEP')
          for (const other of texts)
            if (other !== keep) atMost(convexOverlap(keep.corners, other.corners), 0.01, other.words)
        }
        const boxes = words.map(({ corners }) => pointsBounds(corners))
        boxes.forEach((box, i) => {
          for (const { x, y } of cuts.flat())
            hold(!(x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1), words[i]!.words)
          for (const other of boxes.slice(i + 1)) hold(!boxOverlaps(box, other), words[i]!.words)
        })
      },
    ),
    { numRuns: 110, seed: sawnSeed, endOnFailure: true },
  )
  expect(count.onWood).toBeGreaterThan(25)
  expect(count.below).toBeGreaterThan(2)
})
