import type { Design, Space } from '../../design/design.ts'
import { curvedOf, isCurved } from '../../design/kind-traits.ts'
import { readDesign } from '../../design/read.ts'
import { type Starter, writeStarter } from '../../design/starter.ts'
import { degreesOf } from '../../geometry/degrees.ts'
import { inch } from '../../geometry/inch.ts'
import { showThickness } from '../../length/thickness.ts'
import { showLength, type Units } from '../../length.ts'
import { distinctLines } from '../../pattern/side-lines.ts'
import { closingSheet } from '../../ramp/hazard/run-out.ts'
import { draftQuarter } from '../../ramp/kinds/quarter.ts'
import { aloneAs, type SolvedQuarter, type WholeDesign } from '../../ramp/ramp.ts'
import { solveDesign } from '../../ramp/solve.ts'
import { lipOfRatio, type Steepness, steepnessWord } from '../../ramp/steepness.ts'
import { spaceFindings } from '../../ramp/storing/space.ts'
import { sheetsOf } from '../../stock/panel/sheets.ts'
import { partsOf } from '../../stock/parts.ts'
import { sawTimber } from '../../stock/timber/boards.ts'
import { type Weight, weigh } from '../../stock/weight.ts'
import { coverSides } from '../covering.ts'
import { usualLaying } from '../laying.ts'
import { sidePanels } from '../settle/judge.ts'
import { type Build, buildsFor } from './builds.ts'
import type { Wishes } from './wishes.ts'

/** A ramp that works and keeps every wish. Lengths mm, `lip` degrees. */
export interface ChosenRamp {
  /** its commented file */
  readonly design: string
  /** of the deck */
  readonly height: number
  /** of the ridden face */
  readonly radius: number
  readonly lip: number
  readonly word: Steepness | 'very steep'
  /** of the whole side */
  readonly length: number
  /** of the whole cutting list */
  readonly panels: number
  /** of timber, to buy */
  readonly boards: number
  /** to tape, on the paper of the design */
  readonly pages: number
  readonly weight: Pick<Weight, 'least' | 'usual' | 'most'>
}

/** A curve to be tried: deck height in mm, radius over height. */
export interface Target {
  readonly height: number
  readonly ratio: number
}

/** From lip to back edge, the longest first: that stands and rides best. */
const decks = { mm: ['500', '400', '300'], in: ['20', '16', '12'] } as const
/** Radii come in whole ones of these, mm. */
const radiusSteps = { mm: 10, in: inch / 2 } as const
/** No side stands farther from the next: studs of the usual section carry a rider over no more. mm */
const widestBay = 1250

/** `troubled`: it cannot be built without a stop or a warning; `past`: it can, but a wish is not kept. */
export type Trial = ChosenRamp | 'troubled' | 'past'

export const isChosen = (trial: Trial): trial is ChosenRamp => typeof trial === 'object'

/** The first way to build this curve that works, with the longest deck that keeps the wishes. */
export const tryTarget = (wishes: Wishes, target: Target): Trial => {
  for (const build of buildsFor(wishes.units, lipOfRatio(target.ratio))) {
    const tried: Trial[] = []
    for (const deck of decks[wishes.units]) {
      const trial = judge(wishes, starterOf(wishes, target, build, deck))
      if (isChosen(trial)) return trial
      tried.push(trial)
    }
    // another way to build it would take as much
    if (tried.includes('past')) return 'past'
  }
  return 'troubled'
}

/** How a size and a length of a wish are typed. */
const typed = (units: Units) => {
  const one = (mm: number): string => showLength(mm, units, { decimals: 1 })
  return { one, pair: ([a, b]: readonly [number, number]): string => `${one(a)} x ${one(b)}` }
}

/** A second line of comment: the door and the ceiling, which a file says only with the size of the garage. */
const leftOut = ({ units, garage, door, ceiling }: Wishes): string => {
  if (garage || (!door && ceiling === null)) return ''
  const { one, pair } = typed(units)
  const keys = [
    ...(door ? [`door: ${pair(door)}`] : []),
    ...(ceiling === null ? [] : [`ceiling: ${one(ceiling)}`]),
  ]
  return `\n# Chosen for this too; write it with the size of your garage: space: { garage: WIDTH x DEPTH, ${keys.join(', ')} }`
}

const starterOf = (
  { units, paper, width, garage, door, ceiling }: Wishes,
  { height, ratio }: Target,
  { keys, skin, board }: Build,
  deck: string,
): Omit<Starter, 'about' | 'title'> => {
  const { one: show, pair } = typed(units)
  // cos(lip) = (c − h)/R of the frame, whose radius is the skin more than the surface's; c is the surface's
  const cos = Math.cos(lipOfRatio(ratio))
  const step = radiusSteps[units]
  const radius = Math.round((height - board + skin * cos) / (1 - cos) / step) * step
  return {
    name: 'chosen',
    kind: 'quarter',
    units,
    top: {
      paper,
      ...(garage && {
        space: {
          garage: pair(garage),
          ...(door && { door: pair(door) }),
          ...(ceiling !== null && { ceiling: show(ceiling) }),
        },
      }),
    },
    ramps: [
      {
        kind: 'quarter',
        width: show(width),
        height: { deck: show(height) },
        transition: { circle: { surface: show(radius) }, tangent: { surface: '0' } },
        toe: { mm: '40', in: '1 1/2' }[units],
        deck,
        sides: {
          thickness: { mm: '18', in: '23/32' }[units],
          count: `${Math.max(2, 1 + Math.ceil(width / widestBay))}`,
        },
        ...keys,
        'run-out': { sheet: `${showThickness(closingSheet(radius, units).sheet.thickness, units)} steel` },
        chamfer: 'none',
      },
    ],
  }
}

/** Cheap questions first: most of what is tried is refused. */
const judge = (wishes: Wishes, starter: Omit<Starter, 'about' | 'title'>): Trial => {
  const untitled = readDesign(writeStarter({ ...starter, about: '', title: 'ramp' }))
  if ('problems' in untitled) return 'troubled'
  const { design } = untitled
  const [own] = design.ramps
  if (!own || !isCurved(own)) return 'troubled'
  // before any remedy is tried, which takes longest
  const { drafts, whole } = draftQuarter(own, design.units, design.stock)
  if (!whole || drafts.some(({ level }) => level !== 'note')) return 'troubled'
  if (!fits(whole, wishes, design)) return 'past'
  if (wishes.panels !== null && sidePanels(aloneAs(whole), design) > wishes.panels) return 'past'
  // a garage or a door that it does not pass is a warning of the whole design
  const { space: _, ...anywhere } = design
  const solved = solveDesign(anywhere)
  if (solved.stopped || solved.checks.some(({ level }) => level !== 'note')) return 'troubled'
  const [ramp] = solved.ramps
  if (!ramp || !isCurved(ramp)) return 'troubled'
  return told(wishes, starter, design, solved, ramp)
}

const fits = (ramp: SolvedQuarter, { garage, door, ceiling }: Wishes, { units }: Design): boolean => {
  const boundless = 1e9
  const space: Space = { garage: garage ?? [boundless, boundless], door, ceiling }
  return spaceFindings(ramp, space, units).length === 0
}

const told = (
  wishes: Wishes,
  starter: Omit<Starter, 'about' | 'title'>,
  design: Design,
  solved: WholeDesign,
  ramp: SolvedQuarter,
): Trial => {
  const { timbers, units } = wishes
  const parts = partsOf(design, solved)
  const boards = sawTimber(parts.timbers, design)?.reduce((sum, { boards: own }) => sum + own.length, 0)
  if (boards === undefined) return 'troubled'
  if (timbers !== null && boards > timbers) return 'past'
  const laid = sheetsOf(design, parts)
  if ('faults' in laid) return 'troubled'
  const { counts, cover } = coverSides(distinctLines(curvedOf(solved.ramps)), usualLaying(design.paper))
  const { least, usual, most } = weigh(design, solved, parts)
  const { lipAngle, radius } = ramp.transition
  const word = steepnessWord(lipAngle)
  const height = showLength(ramp.transition.heights.deck, units, { decimals: 1, unit: true })
  return {
    design: writeStarter({
      ...starter,
      about: `A ${word} quarter with its deck ${height} high. How high and how steep suits whom is custom, no source.${leftOut(wishes)}`,
      title: `${word[0]!.toUpperCase()}${word.slice(1)} quarter, ${height} high`,
    }),
    height: ramp.transition.heights.deck,
    radius: radius.surface,
    lip: degreesOf(lipAngle),
    word,
    length: ramp.length,
    panels: laid.sheets.reduce((sum, { panels }) => sum + panels.length, 0),
    boards,
    pages: counts[cover],
    weight: { least, usual, most },
  }
}
