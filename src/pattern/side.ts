import type { Units } from '../design/design.ts'
import { stroke, text } from '../drawing/drawing.ts'
import { circle, pathOf, pathSegments, type Segment } from '../geometry/path.ts'
import { pointDistance } from '../geometry/point.ts'
import { showAngle } from '../length/show-angle.ts'
import { showLength } from '../length.ts'
import { revealWords } from '../ramp/check/reveal-words.ts'
import { middleRise } from '../ramp/curve/middle-rise.ts'
import type { SolvedQuarter } from '../ramp/ramp.ts'
import type { Edge } from '../ramp/side/side.ts'
import { piecesOf } from '../ramp/splice/splice.ts'
import { spliceWords } from '../ramp/splice/splice-words.ts'
import { steepnessWord } from '../ramp/steepness.ts'
import { heightLevels } from './heights.ts'
import type { EdgeName, Pattern, PatternDistance } from './pattern.ts'
import { letters, pens } from './pens.ts'
import { reliefHole, roundWords } from './relief-hole.ts'
import { sideLines } from './side-lines.ts'
import { plateMarks, spliceLabels, spliceMarks } from './splice-marks.ts'
import { faceMark, lyingLabel, timberScrews } from './timber-marks.ts'

/** A full-size side. */
export const sidePattern = (ramp: SolvedQuarter, serves: readonly string[], units: Units): Pattern => {
  const { side, transition } = ramp
  const timbers = [...ramp.studs, ...ramp.deckTimbers]
  const names = timbers.map((_, i) => ({
    called: i < ramp.studs.length ? ('stud' as const) : ('timber' as const),
    number: i + 1,
  }))
  const splices = ramp.splices.flatMap((splice, i) => spliceLabels(splice, i, units))
  const traced = ['curve', 'notch', 'toe']
  const sawn = side.edges.filter(({ name }) => name !== 'bottom')
  const hole = reliefHole(ramp.coping, units)
  const round = roundWords(ramp.coping, units)
  return {
    name: `${ramp.name}/side`,
    ramp: ramp.name,
    part: 'side',
    serves,
    outline: side.outline,
    edges: sawn.map(({ name, path }) => ({ path, traced: traced.includes(name) })),
    quiet: [
      ...ramp.splices.map(plateMarks),
      stroke('datum', pathOf({ x: 0, y: 0 }, { x: side.length, y: 0 }), pens.datum),
      stroke('datum', pathOf(transition.lip, { x: side.length, y: side.height }), pens.datum),
    ],
    marks: [
      ...timbers.flatMap(faceMark),
      ...ramp.splices.map(spliceMarks),
      ...(hole
        ? [
            ...hole.marks,
            text('mark', { x: hole.corner.x + 3, y: hole.corner.y + 3 }, letters.small, hole.words),
          ]
        : []),
      ...(round ? [round] : []),
      ...[transition.toe, transition.lip].map((at) => stroke('mark', circle(at, pointRing), pens.mark)),
    ],
    edgeNames: side.edges.flatMap(edgeNames),
    levels: heightLevels(ramp, units),
    labels: [...timbers.map((timber, i) => lyingLabel(timber, names[i]!)), ...splices],
    ...sideLines(ramp),
    screws: timbers.map((timber, i) => timberScrews(timber, names[i]!, side.outline, ramp.endScrews[i]!)),
    pieces: ramp.splices.length + 1,
    joints: ramp.splices.map(({ top, foot }) => [top, foot]),
    length: side.length,
    height: side.height,
    distances: sideDistances(ramp),
    facts: sideFacts(ramp, units),
  }
}

/** Of an edge's own straight lines, in the way of the outline. */
const edgeNames = ({ name, path }: Edge): readonly EdgeName[] => {
  const of = (words: string, segment: Segment | undefined): readonly EdgeName[] =>
    segment?.kind === 'line' ? [{ words, from: segment.from, to: segment.to }] : []
  const [first, second] = pathSegments(path)
  switch (name) {
    case 'bottom':
      return of("panel's own edge: no cut", first)
    case 'toe':
      return of('front edge', first)
    case 'notch':
      // a round seat has neither
      return second?.kind === 'line' ? [...of('back wall', first), ...of('floor', second)] : []
    default:
      return []
  }
}

/** Radius of the ring round a point that has a name, mm. */
const pointRing = 1.5

/** Chord and middle rise of the curve; then the panel's own length and diagonals. */
const sideDistances = ({ side, transition, coping }: SolvedQuarter): readonly PatternDistance[] => {
  const { curve, toe, lip } = transition
  // a notch takes the lip away
  const onWood = coping === null
  const where = onWood ? '' : ' (on paper only)'
  const square = `from the middle of that line square to the curve${where}`
  return [
    { words: `TOE to LIP, straight${where}`, value: pointDistance(toe, lip), of: 'chord', onWood },
    { words: square, value: middleRise(curve), of: 'rise', onWood },
    { words: 'bottom edge to top line', value: side.height, of: 'panel', onWood: true },
    { words: 'front edge to back edge', value: side.length, of: 'panel', onWood: true },
    {
      words: 'front bottom corner to back top corner',
      value: Math.hypot(side.length, side.height),
      of: 'panel',
      onWood: true,
    },
    {
      words: 'TOE to back top corner',
      value: Math.hypot(side.length, side.height - toe.y),
      of: 'panel',
      onWood: true,
    },
  ]
}

const sideFacts = (ramp: SolvedQuarter, units: Units): readonly string[] => {
  const show = (mm: number): string => showLength(mm, units)
  const fine = (mm: number): string => showLength(mm, units, { decimals: 1 })
  const { heights, radius, lipAngle } = ramp.transition
  const { coping } = ramp
  return [
    `heights: frame ${show(heights.frame)}, deck ${show(heights.deck)}, ridden face at the lip ${show(heights.surface)}`,
    `radius: frame ${show(radius.frame)}, ridden face ${show(radius.surface)}; lip ${showAngle(lipAngle)}, ${steepnessWord(lipAngle)}`,
    ...(coping
      ? [
          `pipe ${fine(coping.outside)}: its reveal is ${revealWords(coping, ramp.design, fine)}; ` +
            `notch: its back wall ${fine(coping.along)} behind LIP, its floor ${fine(coping.down)} below the top line`,
        ]
      : []),
    ...(ramp.splices.length > 0
      ? [
          `pieces ${piecesOf(ramp).join(', ')} from the toe: ${spliceWords(ramp.splices, ramp.studs.length, units)}`,
        ]
      : []),
    ...(ramp.design.chamfer > 0
      ? [`back bottom corner: 45° cut, ${show(ramp.design.chamfer)} along both edges`]
      : []),
  ]
}
