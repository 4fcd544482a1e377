import type { Units } from '../../design/design.ts'
import { type Drawing, group, stroke, text } from '../../drawing/drawing.ts'
import { paragraph } from '../../drawing/paragraph.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import type { Box } from '../../geometry/bounds.ts'
import { rectangle } from '../../geometry/path.ts'
import { showLength } from '../../length.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { type Cover, covers } from '../cover/cover.ts'
import type { CoverCounts } from '../cover/pattern-covers.ts'
import type { Expected } from '../proof/budget.ts'
import { type Datum, datumFigures } from '../proof/datum.ts'
import { missingScrewsWords } from '../proof/missing-screws.ts'
import { type SurveyLine, surveyLeast, surveyLength } from '../proof/survey.ts'
import type { Tile } from '../tile/tile.ts'
import { cautions } from './cautions.ts'
import { type MapPicture, mapPicture } from './map-picture.ts'

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

const pictureStyle = { width: nominal.width - 10, height: 78, number: 6, name: letters.small }

/** Heights of its letters, the larger ones where they fit, mm. */
const sizes = [3, 2.7, letters.small] as const

/** First page of a pattern: the outline under its tiles, what to do, what to check, cautions; ideal page mm. */
export const mapPage = (window: Box, facts: MapFacts): Drawing => {
  // where none fit, all of it a little smaller
  const picture = mapPicture(nominal.width, facts, pictureStyle)
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
  const { pattern, units, tiles, datums } = facts
  const body = { layer: 'note', width: nominal.width, size } as const
  const title = paragraph({ x: 0, y: nominal.height }, facts.title, {
    ...body,
    size: letters.word,
    face: 'bold',
  })
  const [first, last] = [tiles[0]!, tiles.at(-1)!]
  const numbers = `${first.number} to ${last.number}`
  const what = paragraph(
    { x: 0, y: title.bottom },
    `${pattern.part} of ${pattern.serves.join('; ')}. Pages ${numbers} on ${paperWord(facts.paper)}, set ${facts.set}. Ways to cover it: ${covers.map((way) => `${way} ${facts.counts[way]}`).join(', ')} pages; this is ${facts.cover}. Lengths in ${units === 'in' ? 'inches: + is 1/32 more, – is 1/32 less' : 'mm'}.`,
    body,
  )
  let top = what.bottom - 4 - picture.height
  const marks: Drawing[] = [title.marks, what.marks, [group(affineTranslate(0, top), picture.marks)]]
  top -= 2
  const write = (words: string, indent: number, face: 'regular' | 'bold' = 'regular'): void => {
    const lines = paragraph({ x: indent, y: top }, words, { ...body, width: nominal.width - indent, face })
    marks.push(lines.marks)
    top = lines.bottom + 0.4
  }
  steps(facts).forEach((step, i) => {
    marks.push([
      text('note', { x: 4, y: top - size }, size, `${i + 1}`, {
        face: 'bold',
        align: 'right',
      }),
    ])
    write(step, 6)
  })
  for (const words of missingScrewsWords(pattern, tiles)) write(words, 6, 'bold')
  top -= 1.5
  write('Check these on the taped paper, and again on the sawn wood:', 0, 'bold')
  for (const { words, value, tolerance } of facts.survey)
    write(`${surveyLength({ value, tolerance }, units)}   ${words}`, 6)
  const { likely, worst } = facts.expected.lip
  write(
    `When they are met, the lip lies within ${likely.toFixed(1)} mm of its place as a rule, ${worst.toFixed(1)} mm at worst.`,
    6,
  )
  if (tiles.length < surveyLeast)
    write(
      'With so few pages these do not show a small slip: trust the snap lines and the scales at the joints.',
      6,
    )
  const own = pattern.distances.filter((distance) => distance.of === 'panel')
  write(`The panel: ${own.map(({ words, value }) => `${showLength(value, units)} ${words}`).join('; ')}.`, 0)
  for (const datum of datums)
    write(`Cross ${datum.letter}: ${datumFigures(datum.at, pattern, units).join(', ')}.`, 0)
  top -= 1.5
  for (const fact of pattern.facts) write(fact, 0)
  top -= 3
  const frameTop = top + 1.5
  for (const caution of cautions) {
    const lines = paragraph({ x: 3, y: top - 1 }, caution, { ...body, width: nominal.width - 6 })
    marks.push(lines.marks)
    top = lines.bottom + 0.8
  }
  marks.push([stroke('note', rectangle(0, top - 1.5, nominal.width, frameTop), pens.mark)])
  return { marks: marks.flat(), bottom: top - 1.5 }
}

const steps = ({ units, tiles, cover, trial, strips, pattern }: MapFacts): readonly string[] => {
  const rows = new Map(tiles.map((tile) => [tile.row, tile.snap]))
  const level = [...rows.values()].every(([a, b]) => Math.abs(a.y - b.y) < 1e-6)
  const onPanel = [...rows].filter(([, [a]]) => a.y > 0 && a.y < pattern.height)
  const beyond = [...rows.keys()]
    .filter((row) => !onPanel.some(([name]) => name === row))
    .map((row) => `row ${row}`)
  const lines = onPanel.map(([row, [a]]) => `${row} ${showLength(a.y, units)}`).join(', ')
  return [
    'Print at 100 %, never "fit to page", one-sided. Measure the test square (its own sheet) before you trust any page.',
    `Take a factory edge of the panel as its bottom edge; measure both diagonals of the panel first: they must be equal. It must hold ${showLength(pattern.length, units)} × ${showLength(pattern.height, units)} ${units}.`,
    ...(trial
      ? ['Saw the lip trial in scrap and try it with the real pipe before you cut the first side.']
      : []),
    [
      level
        ? `Chalk the snap lines on the panel, above its bottom edge: ${lines} ${units}.`
        : 'Snap a straight line for each row on a clean floor or board.',
      ...(level && beyond.length > 0
        ? [`Beyond the panel is ${beyond.join(', ')}: lay it by its joints.`]
        : []),
      ...(cover === 'whole'
        ? []
        : ['Set out the crosses on the panel with tape and square (figures below).']),
    ].join(' '),
    'Trim each page on its left and lower joint lines, where it has them (its big number upright). Lay the pages in the order of their numbers, each row to its snap line; snip edges that are not trimmed in to the arrowheads to see it. At a joint the crosses lie on each other, half circles of one number make a whole one, and the zero ticks of both scales run through. Where tick 3 does instead, the page is 0.3 mm off; if it is more, lay it again. Low-tack tape; use the paper the same day, damp paper grows.',
    cover === 'whole'
      ? "Lay the taped sheet to the panel's bottom and front edges; blank paper may hang over them."
      : `${level ? 'Page by page, lay the crosses on those of the panel too' : 'Lay the taped sheet on the panel, each cross on its own'} (prick through the paper)${level ? '; where chalk and cross disagree, the cross decides' : ''}. Straight edges are the panel's own or a ruler's work; blank paper may hang over them.`,
    'The middle of the thick black line is the line. Prick through it every 25 mm (1 in) or cut the paper on it, then draw with a thin batten. Dashed boxes are timbers on the back, the inner face, seen from the end, X on their wood, a cross in a ring at each screw: prick these through.',
    'Saw beside the line on its grey side, marked WASTE, and smooth down to it. KEEP is your panel.',
    'Trace the first side onto all the others and drill its screw holes through them; turned over, it is the other end of the ramp.',
    ...(strips
      ? [
          'Cut out the strips at the end of the set: each layer of skin has its studs, seams and screws on its own, the pipe its holes.',
        ]
      : []),
  ]
}

/** Papers as people write them. */
const paperWord = (name: string): string => (/^a\d$/.test(name) ? name.toUpperCase() : name)
