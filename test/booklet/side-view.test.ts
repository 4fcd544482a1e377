import { describe, expect, test } from 'vitest'
import { rampProfile, solvedRamp } from '../../src/booklet/views/profile.ts'
import { sidePicture } from '../../src/booklet/views/side-picture.ts'
import { sideView } from '../../src/booklet/views/side-view.ts'
import { viewMarks } from '../../src/booklet/views/view.ts'
import type { Design } from '../../src/design/design.ts'
import { drawingBounds } from '../../src/drawing/drawing-bounds.ts'
import { pathBounds } from '../../src/geometry/bounds.ts'
import { pathSegments } from '../../src/geometry/path.ts'
import { pointDistance } from '../../src/geometry/point.ts'
import { pathSample } from '../../src/geometry/sample.ts'
import { readLength } from '../../src/length.ts'
import type { SolvedDesign, SolvedRamp } from '../../src/ramp/ramp.ts'
import { drawDesign } from '../../src/ramp/solve.ts'
import { designOf } from '../support/design-of.ts'
import { atLeast, hold } from '../support/hold.ts'
import { assertNear } from '../support/near.ts'
import { overlaps } from '../support/overlaps.ts'
import { opened } from '../support/strokes.ts'
import { templates, templateText } from '../support/templates.ts'
import { jobOf } from '../tape-up/jobs.ts'

interface Solved {
  readonly design: Design
  readonly solved: SolvedDesign
}

const known = new Map<string, Solved>()

const solve = (text: string): Solved => {
  const before = known.get(text)
  if (before) return before
  const design = designOf(text)
  const now = { design, solved: drawDesign(design) }
  known.set(text, now)
  return now
}

const rampsOf = (
  text: string,
): readonly { readonly design: Design; readonly ramp: SolvedRamp; readonly index: number }[] => {
  const { design, solved } = solve(text)
  return solved.ramps.flatMap((ramp, index) => {
    const whole = solvedRamp(ramp)
    return whole ? [{ design, ramp: whole, index }] : []
  })
}

const generated = Array.from({ length: 25 }, (_, i) => jobOf(i).text)
const all = [...templates.map(templateText), ...generated]

describe('the profile of a ramp', () => {
  test('has its layers where their lengths and thicknesses put them', () => {
    let looked = 0
    for (const text of all)
      for (const { design, ramp } of rampsOf(text)) {
        const { skin } = rampProfile(ramp, design.units)
        ramp.skin
          .filter(({ length }) => length > 0)
          .forEach((layer, i) => {
            const segments = pathSegments(skin[i]!)
            const thick = layer.sheet.thickness
            // square ends
            const ends = segments.filter(
              (segment) =>
                segment.kind === 'line' && Math.abs(pointDistance(segment.from, segment.to) - thick) < 1e-6,
            )
            atLeast(ends.length, 2)
            if (ramp.kind === 'flat') return
            // from the centre: the frame's radius less what lies below, on both faces
            const { centre, radius } = ramp.transition
            for (const p of pathSample(skin[i]!, 40)) {
              const off = radius.frame - pointDistance(centre, p)
              hold(off > layer.below - 1e-6 && off < layer.below + thick + 1e-6)
              looked++
            }
          })
      }
    expect(looked).toBeGreaterThan(3000)
  })

  test('has its board on the side, and a run-out that lies on the floor and on the skin', () => {
    let sheets = 0
    for (const { design, ramp } of rampsOf(templateText('quarter-mm'))) {
      if (ramp.kind !== 'quarter') continue
      const { board, runOut } = rampProfile(ramp, design.units)
      const box = pathBounds(board!)
      assertNear(box.y0, ramp.transition.heights.frame, 1e-9)
      assertNear(box.y1, ramp.transition.heights.deck, 1e-9)
      assertNear(box.x1, ramp.length, 1e-9)
      const sheet = pathBounds(runOut!)
      assertNear(sheet.y0, 0, 1e-6)
      expect(sheet.x0).toBeLessThan(ramp.transition.centre.x)
      expect(sheet.x1).toBeGreaterThan(0)
      sheets++
    }
    expect(sheets).toBe(1)
  })
})

describe('the side view', () => {
  test('is to scale', () => {
    for (const { design, ramp, index } of rampsOf(templateText('quarter-mm'))) {
      const { parts } = sideView({ ramp, units: design.units, ratio: 1 / 20, index })
      const side = drawingBounds(parts.find(({ name }) => name === 'side')!.marks)!
      assertNear(side.x1 - side.x0, ramp.length / 20, 1e-9)
    }
  })

  test('says the figures of the ramp and no others', () => {
    let looked = 0
    for (const text of all)
      for (const { design, ramp, index } of rampsOf(text)) {
        const { units } = design
        const known =
          ramp.kind === 'flat'
            ? [ramp.length, ramp.heights.frame, ramp.heights.surface]
            : [
                ramp.length,
                ramp.deck,
                ...Object.values(ramp.transition.heights),
                ramp.transition.run,
                ramp.transition.radius[ramp.design.transition.circle.layer],
                ramp.transition.toe.y,
                ramp.design.chamfer,
                ramp.coping?.outside ?? 0,
              ]
        const words = opened(viewMarks(sideView({ ramp, units, ratio: 1 / 20, index }))).words.map(
          (word) => word.text,
        )
        for (const word of words) {
          if (word.endsWith('°')) {
            expect(ramp.kind).toBe('quarter')
            if (ramp.kind === 'quarter')
              assertNear(Number(word.slice(0, -1)), (ramp.transition.lipAngle * 180) / Math.PI, 0.051)
            continue
          }
          const figure = word.replace(/^[^\d]*/, '').replace(/[+–]$/, '')
          const reading = readLength(figure, units)
          if (!('mm' in reading)) throw new Error(`"${word}" is no length`)
          // mm are whole, inches sixteenths with a sign for the 32nd between
          const near = units === 'mm' ? 0.501 : 25.4 / 32 + 25.4 / 64 + 1e-6
          hold(
            known.some((mm) => Math.abs(mm - reading.mm) <= near),
            word,
          )
          looked++
        }
      }
    expect(looked).toBeGreaterThan(200)
  })

  test('has no words on words or on lines, at the scale that its page takes', () => {
    let [words, dimensions, ramps] = [0, 0, 0]
    for (const text of all) {
      const { design, solved } = solve(text)
      for (const room of [
        { width: 190, height: 254 },
        { width: 190, height: 120 },
      ]) {
        const picture = sidePicture(design, solved, room)
        if (!picture) continue
        const found = overlaps(picture.drawing, { x0: 0, y0: 0, x1: picture.width, y1: picture.height })
        expect(found.faults, text).toEqual([])
        words += found.words
        ramps++
      }
      for (const { ramp, index } of rampsOf(text))
        dimensions += sideView({ ramp, units: design.units, ratio: 1 / 20, index }).parts.filter(
          ({ name }) => name === 'dimension',
        ).length
    }
    expect(ramps).toBeGreaterThan(50)
    expect(words).toBeGreaterThan(500)
    // five of length and height at least, most ramps
    expect(dimensions).toBeGreaterThan(7 * (ramps / 2))
  })

  test('names the keys of the design file that its parts and figures come from', () => {
    const [first] = rampsOf(templateText('quarter-mm'))
    const { parts } = sideView({ ramp: first!.ramp, units: 'mm', ratio: 1 / 20, index: 0 })
    const keys = new Set(parts.flatMap(({ key }) => key ?? []))
    for (const key of [
      'height.deck',
      'transition.circle.surface',
      'toe',
      'deck',
      'studs',
      'skin.0',
      'coping.outside',
      'chamfer.leg',
    ])
      expect(keys).toContain(`ramps.0.${key}`)
  })
})
