import type { Units } from '../../design/design.ts'
import { draftStyle } from '../../drafting/line-types.ts'
import { type Drawing, group, stroke, text } from '../../drawing/drawing.ts'
import { type ParagraphStyle, paragraph } from '../../drawing/paragraph.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import type { Box } from '../../geometry/bounds.ts'
import { pathOf } from '../../geometry/path.ts'
import { showLength } from '../../length.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { type Cover, covers } from '../cover/cover.ts'
import type { CoverCounts } from '../cover/pattern-covers.ts'
import type { Expected } from '../proof/budget.ts'
import type { Datum } from '../proof/datum.ts'
import { missingScrews } from '../proof/missing-screws.ts'
import { type SurveyLine, surveyLeast } from '../proof/survey.ts'
import { timberPages } from '../proof/timber-pages.ts'
import type { Tile } from '../tile/tile.ts'
import { cautions } from './cautions.ts'
import { mapPicture } from './map-picture.ts'
import { proofTables } from './proof-tables.ts'
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
  /** story strips lie at the end of the set */
  readonly strips: boolean
}

/** On wider windows all of it is larger, at most twice; on narrower ones its lines break sooner. mm */
const nominal = 186

/**
 * Heights of all letters but the title and the pages' numbers, the largest that leaves the drawing room, and how much it needs with them:
 * the page is a drawing first. mm
 */
const tries = [
  { size: 3, least: 86 },
  { size: 2.8, least: 80 },
  { size: 2.6, least: 74 },
  { size: 2.4, least: 68 },
  { size: 2.2, least: 56 },
  { size: letters.mark, least: 46 },
] as const
/** Of the drawing: as much as it has use for, and what its dimensions take beside it, mm. */
const picture = { most: 116, beside: 24 } as const

/** First page of a pattern: the outline under its tiles, what to do, what to check, cautions; ideal page mm. */
export const mapPage = (window: Box, facts: MapFacts): Drawing => {
  const wide = window.x1 - window.x0
  const scale = Math.min(2, Math.max(1, wide / nominal))
  const [width, height] = [wide / scale, (window.y1 - window.y0) / scale]
  const fitting = (one: (typeof tries)[number]) => {
    const words = wordsOf(facts, one.size, width)
    const left = height - words.above.height - words.below.height - words.foot.height
    return { ...one, ...words, left }
  }
  let found = fitting(tries[0])
  for (const one of tries.slice(1)) if (found.left < found.least) found = fitting(one)
  const { size, least, left, above, below, foot } = found
  const drawn = mapPicture(
    width,
    facts,
    {
      width: width - picture.beside,
      height: Math.min(picture.most, Math.max(least, left) - 2 * size - 4),
      number: 6,
      name: size,
      dimensions: true,
    },
    facts.units,
  )
  const used = above.height + drawn.height + below.height + foot.height
  // all of it smaller where that is too much for a low page
  const fit = Math.min(1, height / used)
  const top = Math.max(height, used)
  return [
    group(
      [scale * fit, 0, 0, scale * fit, window.x0, window.y1 - top * scale * fit],
      [
        group(affineTranslate(0, top), above.marks),
        group(affineTranslate(0, top - above.height - drawn.height), drawn.marks),
        group(affineTranslate(0, top - above.height - drawn.height), below.marks),
        // at the foot of the page
        group(affineTranslate(0, foot.height), foot.marks),
      ],
    ),
  ]
}

/** Marks hung from 0,0 downward. */
interface Hung {
  readonly marks: Drawing
  readonly height: number
}

/** What stands over the drawing, under it, and at the foot of the page. */
const wordsOf = (
  facts: MapFacts,
  size: number,
  width: number,
): { readonly above: Hung; readonly below: Hung; readonly foot: Hung } => {
  const { pattern, units, tiles } = facts
  const style = { layer: 'note', width, size } as const
  const above = hung(({ write, down }) => {
    write(facts.title, 0, { ...style, size: letters.word, face: 'bold' })
    write(
      `${pattern.part} of ${pattern.serves.join('; ')}. ${pagesWord(tiles)} on ${paperWord(facts.paper)}, set ${facts.set}. Cover ${facts.cover}; ${covers.map((way) => `${way} ${facts.counts[way]}`).join(', ')} pages. Lengths in ${units === 'in' ? 'inches: + is 1/32 more, – is 1/32 less' : 'mm'}.`,
      0,
      style,
    )
    // names at the top of the drawing stand above it
    down(size + 4)
  })
  const below = hung(({ write, put, down, top }) => {
    down(3)
    tapingSteps(facts).forEach((step, i) => {
      put([text('note', { x: 4, y: top() - size }, size, `${i + 1}`, { face: 'bold', align: 'right' })])
      write(step, 6, style)
      down(size / 4)
    })
    const missing = missingScrews(pattern, tiles, units)
    if (missing) {
      write(missing.which, 6, { ...style, face: 'bold' })
      write(missing.places, 6, style)
    }
    down(2)
    const tables = proofTables(facts, { ...draftStyle, size }, width)
    put([group(affineTranslate(0, top()), tables.marks)])
    down(tables.height + 2)
    const { likely, worst } = facts.expected.lip
    write(
      `When the checks are met, the lip lies within ${likely.toFixed(1)} mm of its place as a rule, ${worst.toFixed(1)} mm at worst.${
        tiles.length < surveyLeast
          ? ' With so few pages these do not show a small slip: trust the snap lines and the scales at the joints.'
          : ''
      }`,
      0,
      style,
    )
    // length and height are in the drawing
    const own = pattern.distances.filter(({ of }) => of === 'panel').slice(2)
    const panel = own.map(({ words, value }) => `${showLength(value, units)} ${words}`)
    write(`Panel: ${[...panel, ...pattern.facts].join('; ')}.`, 0, style)
    const timbers = timberPages(pattern, tiles)
    if (timbers) write(timbers, 0, style)
    // the rule of the foot stands off the last line
    down(size)
  })
  const foot = hung(({ write, put, down }) => {
    put([stroke('note', pathOf({ x: 0, y: 0 }, { x: width, y: 0 }), pens.mark)])
    down(1)
    for (const caution of cautions) write(caution, 0, style)
  })
  return { above, below, foot }
}

interface Hanging {
  readonly top: () => number
  readonly down: (by: number) => void
  readonly put: (marks: Drawing) => void
  readonly write: (words: string, indent: number, style: ParagraphStyle) => void
}

/** What is written one under the other. */
const hung = (fill: (hanging: Hanging) => void): Hung => {
  let y = 0
  const marks: Drawing[] = []
  fill({
    top: () => y,
    down: (by) => {
      y -= by
    },
    put: (more) => {
      marks.push(more)
    },
    write: (words, indent, style) => {
      const lines = paragraph({ x: indent, y }, words, { ...style, width: style.width - indent })
      marks.push(lines.marks)
      y = lines.bottom + 0.4
    },
  })
  return { marks: marks.flat(), height: -y }
}

const pagesWord = (tiles: readonly Tile[]): string =>
  tiles.length === 1 ? `Page ${tiles[0]!.number}` : `Pages ${tiles[0]!.number} to ${tiles.at(-1)!.number}`

/** Papers as people write them. */
const paperWord = (name: string): string => (/^a\d$/.test(name) ? name.toUpperCase() : name)
