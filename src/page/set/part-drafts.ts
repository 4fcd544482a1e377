import type { Units } from '../../design/design.ts'
import { type DesignStrips, designStrips } from '../../pattern/ramp-strips.ts'
import type { SolvedRamp } from '../../ramp/ramp.ts'
import type { Block, BlockPlace } from '../parts/block.ts'
import { fits } from '../parts/pack.ts'
import { holdsTrial, packedArea, packedPages } from '../parts/packed-page.ts'
import { type PartsLegend, partsLegend } from '../parts/parts-legend.ts'
import { type RampTrial, titleOf } from '../parts/ramp-trial.ts'
import { tapeBlocks } from '../parts/tape-block.ts'
import { pipeBlock, trialBlock } from '../parts/trial-block.ts'
import { trialPage } from '../parts/trial-page.ts'
import { type Sheet, sheetWindow } from '../sheet/sheet.ts'
import type { Draft } from './draft.ts'
import { planPlace } from './plan.ts'

/** What a page of small parts needs to know of its set. */
export interface PartFacts {
  readonly sheet: Sheet
  readonly units: Units
  readonly code: string
  readonly title: string
}

export interface PartDrafts {
  /** pages that follow the map of each pattern */
  readonly besideMap: readonly (readonly Draft[])[]
  /** pages at the end of the set */
  readonly last: readonly Draft[]
  /** how many pages fewer there are than without packing */
  readonly saved: number
}

/** Lip trials, and the story strips of `striped`: each on its own page, or packed. */
export const partDrafts = (
  trials: readonly RampTrial[],
  striped: readonly SolvedRamp[],
  facts: PartFacts,
  pack: boolean,
): PartDrafts => {
  const trialDrafts = trials.map((one) => trialDraft(one, facts, trials.length > 1))
  const found = designStrips(striped, facts.units)
  const strips = found.strips.length > 0 ? stripDrafts(found, facts) : []
  const plain = { besideMap: trialDrafts, last: strips, saved: 0 }
  if (!pack) return plain
  const { drafts, alone } = packedDrafts(trials, found, facts)
  const saved = trialDrafts.flat().length + strips.length - drafts.length - alone.length
  // each on its own page again, where that takes no more
  if (saved <= 0) return plain
  const first = [...drafts.filter(({ kind }) => kind !== 'strip'), ...alone]
  return {
    besideMap: trials.map((_, i) => (i === 0 ? first : [])),
    last: drafts.filter(({ kind }) => kind === 'strip'),
    saved,
  }
}

/** The page of one trial; none for a ramp without. */
const trialDraft = (
  { ramp, trial, strip }: RampTrial,
  { sheet, code, title }: PartFacts,
  several: boolean,
): readonly Draft[] => {
  if (!trial) return []
  const page = trialPage(sheetWindow(sheet), trial, strip, titleOf(title, ramp), code)
  return [
    {
      kind: 'trial',
      label: `Lip trial${several ? ` ${ramp.name}` : ''}`,
      bookmark: `Lip trial: ${trial.name}`,
      draw: page.draw,
      places: [planPlace(sheet, trial.name, page.map, page.window)],
    },
  ]
}

/** Pages of story strips alone. */
const stripDrafts = (strips: DesignStrips, facts: PartFacts): readonly Draft[] => {
  const { sheet, code } = facts
  const window = sheetWindow(sheet)
  const legend = legendOf(strips, facts)
  const told = tapeBlocks(strips.byTape, packedArea(window, legend))
  return packedPages(window, [], told, strips.strips, code, legend).map(({ draw, places }, i) => ({
    kind: 'strip',
    label: `Strips ${i + 1}`,
    bookmark: `Story strips ${i + 1}`,
    draw,
    places: planned(sheet, places),
  }))
}

const legendOf = ({ strips }: DesignStrips, { sheet, units, code, title }: PartFacts): PartsLegend => {
  const { y0, y1 } = sheetWindow(sheet)
  return partsLegend(title, code, strips, units, y1 - y0)
}

const planned = (sheet: Sheet, places: readonly BlockPlace[]): Draft['places'] =>
  places.map(({ pattern, map, window }) => planPlace(sheet, pattern, map, window))

interface PackedDrafts {
  readonly drafts: readonly Draft[]
  /** trials that fit no page with their words as a block: theirs is a page of their own */
  readonly alone: readonly Draft[]
}

/** Trials, strips that measure pipes, and story strips together. */
const packedDrafts = (trials: readonly RampTrial[], strips: DesignStrips, facts: PartFacts): PackedDrafts => {
  const { sheet, code, title } = facts
  const window = sheetWindow(sheet)
  const legend = legendOf(strips, facts)
  const room = packedArea(window, legend)
  const alone: Draft[] = []
  const blocks: Block[] = []
  const pipes = new Map<number, Block>()
  for (const one of trials) {
    const { ramp, trial, strip } = one
    if (!trial) continue
    const block = trialBlock(trial, titleOf(title, ramp), code, room)
    const pipe = strip && pipeBlock(strip, `${ramp.name}/pipe`)
    if (!block || (pipe && !fits(pipe, room))) {
      alone.push(...trialDraft(one, facts, trials.length > 1))
      continue
    }
    blocks.push(block)
    // pipes of one size are measured with one strip
    const { outside } = ramp.coping!
    if (pipe && !pipes.has(outside)) pipes.set(outside, pipe)
  }
  const pages = packedPages(
    window,
    [...blocks, ...pipes.values()],
    tapeBlocks(strips.byTape, room),
    strips.strips,
    code,
    legend,
  )
  return {
    alone,
    drafts: pages.map(({ draw, places }, i): Draft => {
      const kind = kindOf(places)
      const patterns = [...new Set(places.map(({ pattern }) => pattern))].join(', ')
      const held = patterns === '' ? [] : [patterns]
      // one of several parts is one of each kind, as `reprint` counts them
      const count = pages.slice(0, i + 1).filter((page) => {
        const other = kindOf(page.places)
        return other === kind || other === 'parts'
      }).length
      const name = { trial: 'Lip trial', strip: 'Strips', parts: 'Parts' }[kind]
      const label = `${name} ${count}`
      return {
        kind,
        ...(kind === 'parts' ? { holds: ['trial', 'strip'] } : {}),
        label,
        bookmark: [label, ...held].join(': '),
        draw,
        places: planned(sheet, places),
      }
    }),
  }
}

const kindOf = (places: readonly BlockPlace[]): 'trial' | 'strip' | 'parts' => {
  const trial = holdsTrial(places)
  const strip = places.some(({ part }) => part === 'strip')
  return trial && strip ? 'parts' : trial ? 'trial' : 'strip'
}
