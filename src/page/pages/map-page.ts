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
import { missingScrewsWords } from '../proof/missing-screws.ts'
import { type SurveyLine, surveyLeast } from '../proof/survey.ts'
import type { Tile } from '../tile/tile.ts'
import { cautions } from './cautions.ts'
import { type MapPicture, mapPicture } from './map-picture.ts'
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

/** The page is laid out for this window and scaled to the one there is, mm. */
const nominal = { width: 186, height: 252 }

const pictureStyle = {
  width: nominal.width - 24,
  height: 78,
  number: 6,
  name: letters.small,
  dimensions: true,
}

/** Heights of its letters, the larger ones where they fit, mm. */
const sizes = [3, 2.7, letters.small] as const

/** First page of a pattern: the outline under its tiles, what to do, what to check, cautions; ideal page mm. */
export const mapPage = (window: Box, facts: MapFacts): Drawing => {
  // where none fit, all of it a little smaller
  const picture = mapPicture(nominal.width, facts, pictureStyle, facts.units)
  let fitted = content(facts, picture, sizes[0])
  for (const size of sizes.slice(1)) if (fitted.bottom < 0) fitted = content(facts, picture, size)
  const { marks, bottom } = fitted
  const height = nominal.height - Math.min(0, bottom)
  const scale = Math.min(2, (window.x1 - window.x0) / nominal.width, (window.y1 - window.y0) / height)
  return [group([scale, 0, 0, scale, window.x0, window.y1 - nominal.height * scale], marks)]
}

const content = (
  facts: MapFacts,
  picture: MapPicture,
  size: number,
): { readonly marks: Drawing; readonly bottom: number } => {
  const { pattern, units, tiles } = facts
  const body = { layer: 'note', width: nominal.width, size } as const
  const marks: Drawing[] = []
  let top = nominal.height
  const write = (words: string, indent = 0, look: Partial<ParagraphStyle> = {}): void => {
    const lines = paragraph({ x: indent, y: top }, words, { ...body, width: nominal.width - indent, ...look })
    marks.push(lines.marks)
    top = lines.bottom + 0.4
  }
  write(facts.title, 0, { size: letters.word, face: 'bold' })
  write(
    `${pattern.part} of ${pattern.serves.join('; ')}. Pages ${tiles[0]!.number} to ${tiles.at(-1)!.number} on ${paperWord(facts.paper)}, set ${facts.set}. Ways to cover it: ${covers.map((way) => `${way} ${facts.counts[way]}`).join(', ')} pages; this is ${facts.cover}. Lengths in ${units === 'in' ? 'inches: + is 1/32 more, – is 1/32 less' : 'mm'}.`,
  )
  top -= 3 + picture.height
  marks.push([group(affineTranslate(0, top), picture.marks)])
  top -= 4
  tapingSteps(facts).forEach((step, i) => {
    marks.push([text('note', { x: 4, y: top - size }, size, `${i + 1}`, { face: 'bold', align: 'right' })])
    write(step, 6)
  })
  for (const words of missingScrewsWords(pattern, tiles)) write(words, 6, { face: 'bold' })
  top -= 2
  const tables = proofTables(facts, { ...draftStyle, size: Math.min(size, 2.7) }, nominal.width)
  marks.push([group(affineTranslate(0, top), tables.marks)])
  top -= tables.height + 2
  const { likely, worst } = facts.expected.lip
  write(
    `When the checks are met, the lip lies within ${likely.toFixed(1)} mm of its place as a rule, ${worst.toFixed(1)} mm at worst.${
      tiles.length < surveyLeast
        ? ' With so few pages these do not show a small slip: trust the snap lines and the scales at the joints.'
        : ''
    }`,
  )
  const own = pattern.distances.filter((distance) => distance.of === 'panel')
  write(`The panel: ${own.map(({ words, value }) => `${showLength(value, units)} ${words}`).join('; ')}.`)
  for (const fact of pattern.facts) write(fact)
  const foot = (from: number) => {
    let y = from
    const laid = cautions.map((caution) => {
      const lines = paragraph({ x: 0, y: y - 1 }, caution, { ...body, size: letters.small })
      y = lines.bottom + 1.2
      return lines.marks
    })
    return { marks: laid.flat(), bottom: y }
  }
  // at the foot of the page, or behind the rest where that is lower
  const high = 1 - foot(0).bottom
  const from = Math.min(top - 1, high)
  const { marks: warned, bottom } = foot(from)
  marks.push([stroke('note', pathOf({ x: 0, y: from }, { x: nominal.width, y: from }), pens.mark), ...warned])
  // letters reach below their line
  return { marks: marks.flat(), bottom: bottom - 1 }
}

/** Papers as people write them. */
const paperWord = (name: string): string => (/^a\d$/.test(name) ? name.toUpperCase() : name)
