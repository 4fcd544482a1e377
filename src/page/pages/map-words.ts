import type { Units } from '../../design/design.ts'
import { draftStyle } from '../../drafting/line-types.ts'
import { type Drawing, group, stroke, text } from '../../drawing/drawing.ts'
import { type ParagraphStyle, paragraph } from '../../drawing/paragraph.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import { pathOf } from '../../geometry/path.ts'
import { showLength } from '../../length.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { type Cover, covers } from '../cover/cover.ts'
import type { CoverCounts } from '../cover/pattern-covers.ts'
import { boundWords, type Expected } from '../proof/budget.ts'
import type { Datum } from '../proof/datum.ts'
import { type MissingScrews, missingScrews } from '../proof/missing-screws.ts'
import { type SurveyLine, surveyLeast } from '../proof/survey.ts'
import { timberPageWords } from '../proof/timber-page-words.ts'
import { paperWord } from '../sheet/paper.ts'
import type { Tile } from '../tile/tile.ts'
import { cautionsOf } from './cautions.ts'
import { proofTables } from './proof-tables.ts'
import { screwTable } from './screw-table.ts'
import { tapingSteps } from './taping-steps.ts'

export interface MapFacts {
  readonly title: string
  readonly units: Units
  readonly set: string
  readonly cover: Cover
  /** pages for each way */
  readonly counts: CoverCounts
  readonly paper: string
  readonly pattern: Pattern
  readonly tiles: readonly Tile[]
  readonly datums: readonly Datum[]
  readonly survey: readonly SurveyLine[]
  readonly expected: Expected
  readonly trial: boolean
  /** strips that mark the skin lie at the end of the set */
  readonly strips: boolean
}

/** What is written on a map, whatever the height of its letters. */
interface MapWords {
  readonly head: string
  /** the head of a second page */
  readonly again: string
  readonly steps: readonly string[]
  readonly missing: MissingScrews | null
  readonly lip: string
  readonly panel: string
  /** '' where no page shows one */
  readonly timbers: string
}

export const mapWords = (facts: MapFacts): MapWords => {
  const { pattern, units, tiles } = facts
  const { likely, worst } = facts.expected.lip
  // length and height are in the drawing
  const own = pattern.distances.filter(({ of }) => of === 'panel').slice(2)
  const panel = own.map(({ words, value }) => `${showLength(value, units)} ${words}`)
  return {
    head: `${pattern.part} of ${pattern.serves.join('; ')}. ${pagesWord(tiles)} on ${paperWord(facts.paper)}, set ${facts.set}. Cover ${facts.cover}; pages: ${covers.map((way) => `${way} ${facts.counts[way]}`).join(', ')}. ${lengthsIn(units)}`,
    again: `Second page of the map: ${pattern.part} of ${pattern.serves.join('; ')}. ${pagesWord(tiles)} on ${paperWord(facts.paper)}, set ${facts.set}. ${lengthsIn(units)}`,
    steps: tapingSteps(facts),
    missing: missingScrews(pattern, tiles),
    lip: `When the checks are met, the lip lies within ${likely.toFixed(1)} mm of its place as a rule, ${boundWords(worst)} mm at worst.${slipWords(tiles.length)}`,
    panel: `Panel: ${[...panel, ...pattern.facts].join('; ')}.`,
    timbers: timberPageWords(pattern, tiles),
  }
}

/** What hangs from 0,0 downward; drawn once its height fits. */
interface Hung {
  readonly draw: () => Drawing
  readonly height: number
}

/** What a page of a map tells: a map of one page all of it, of two the steps beside the drawing and the tables after. */
export type MapTold = 'all' | 'steps' | 'tables'

/** What stands over the drawing, under it, and at the foot of the page. */
export const hungWords = (
  said: MapWords,
  facts: MapFacts,
  size: number,
  width: number,
  told: MapTold,
): { readonly above: Hung; readonly below: Hung; readonly foot: Hung } => {
  const style = { layer: 'note', width, size, even: true } as const
  const steps = ({ write, put, down, top }: Hanging): void => {
    down(3)
    said.steps.forEach((step, i) => {
      const y = top() - size
      put(() => [text('note', { x: 4, y }, size, `${i + 1}`, { face: 'bold', align: 'right' })])
      write(step, 6, style)
      down(size / 4)
    })
  }
  const tables = ({ write, put, down, top }: Hanging): void => {
    if (said.missing) {
      write(said.missing.which, 0, { ...style, face: 'bold' })
      down(size / 4)
      const list = screwTable(said.missing.screws, facts.units, { ...draftStyle, size }, width)
      const y = top()
      put(() => [group(affineTranslate(0, y), list.draw())])
      down(list.height)
    }
    down(2)
    const proofs = proofTables(facts, { ...draftStyle, size }, width)
    const y = top()
    put(() => [group(affineTranslate(0, y), proofs.draw())])
    down(proofs.height + 2)
    write(said.lip, 0, style)
    write(said.panel, 0, style)
    if (said.timbers) write(said.timbers, 0, style)
  }
  const above = hung(({ write, down }) => {
    write(facts.title, 0, { ...style, size: letters.word, face: 'bold' })
    write(told === 'tables' ? said.again : said.head, 0, style)
    // names at the top of the drawing stand above it
    down(size + 4)
  })
  const below = hung((hanging) => {
    if (told !== 'tables') steps(hanging)
    if (told === 'steps')
      hanging.write("What to set out and what to check: tables on the map's second page.", 0, {
        ...style,
        face: 'bold',
      })
    else tables(hanging)
    // the rule of the foot stands off the last line
    hanging.down(size)
  })
  const foot = hung(({ write, put, down }) => {
    put(() => [stroke('note', pathOf({ x: 0, y: 0 }, { x: width, y: 0 }), pens.mark)])
    down(1)
    for (const caution of cautionsOf(facts.pattern.notch.length > 0)) write(caution, 0, style)
  })
  return { above, below, foot }
}

interface Hanging {
  readonly top: () => number
  readonly down: (by: number) => void
  readonly put: (draw: () => Drawing) => void
  readonly write: (words: string, indent: number, style: ParagraphStyle) => void
}

/** What is written one under the other. */
const hung = (fill: (hanging: Hanging) => void): Hung => {
  let y = 0
  const drawn: (() => Drawing)[] = []
  fill({
    top: () => y,
    down: (by) => {
      y -= by
    },
    put: (draw) => {
      drawn.push(draw)
    },
    write: (words, indent, style) => {
      const lines = paragraph({ x: indent, y }, words, { ...style, width: style.width - indent })
      drawn.push(() => lines.marks)
      y = lines.bottom + 0.4
    },
  })
  return { draw: () => drawn.flatMap((draw) => draw()), height: -y }
}

/** What is trusted where the checks are too few. */
const slipWords = (pages: number): string => {
  if (pages >= surveyLeast) return ''
  return pages === 1
    ? ' On one page these do not show a small slip: trust the snap line.'
    : ' With so few pages these do not show a small slip: trust the snap lines and the scales at the joints.'
}

const lengthsIn = (units: Units): string =>
  `Lengths in ${units === 'in' ? 'inches: + is 1/32 more, – is 1/32 less' : 'mm'}.`

const pagesWord = (tiles: readonly Tile[]): string =>
  tiles.length === 1 ? `Page ${tiles[0]!.number}` : `Pages ${tiles[0]!.number} to ${tiles.at(-1)!.number}`
