import type { Units } from '../design/design.ts'
import type { SolvedQuarter, SolvedRamp } from '../ramp/ramp.ts'
import { sideMarks } from '../ramp/side/side-marks.ts'
import { piecesOf } from '../ramp/splice/splice.ts'
import type { Pattern } from './pattern.ts'
import { sidePattern } from './side.ts'
import { sidesAlike } from './side-lines.ts'

/** With their marks, as on the layout of panels. */
const partsOf = (ramp: SolvedQuarter, marks: readonly string[]): string => {
  const ribs = ramp.design.sides.count - 2
  const count = `2 sides${ribs === 0 ? '' : ribs === 1 ? ', 1 rib' : `, ${ribs} ribs`}`
  const pieces = piecesOf(ramp)
  const each = pieces.length > 1 ? `, each of pieces ${pieces.join(', ')}` : ''
  return `${ramp.name}: ${count} (${marks.length > 2 ? `${marks[0]}–${marks.at(-1)}` : marks.join(', ')}${each})`
}

/** A ramp whose sides need a pattern; a flat's are straight cuts. */
const plotted = (ramp: SolvedRamp): readonly SolvedQuarter[] => {
  switch (ramp.kind) {
    case 'quarter':
      return [ramp]
    case 'flat':
      return []
    default:
      return ramp satisfies never
  }
}

/** One pattern for each distinct side, in the order of the ramps; it names every part that it serves. A flat needs none. */
export const sidePatterns = (ramps: readonly SolvedRamp[], units: Units): readonly Pattern[] => {
  const marks = sideMarks(ramps.map(({ design }) => design))
  const named = new Map(ramps.map((ramp, i) => [ramp.name, marks[i]!]))
  return sidesAlike(ramps.flatMap(plotted)).map((same) =>
    sidePattern(
      same[0]!,
      same.map((ramp) => partsOf(ramp, named.get(ramp.name)!)),
      units,
    ),
  )
}
