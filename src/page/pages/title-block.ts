import { arrow } from '../../drawing/arrow.ts'
import { type Drawing, fill, group, type Shape, shared, stroke, text } from '../../drawing/drawing.ts'
import { faceWords, tileWords } from '../../drawing/set-words.ts'
import { shortened } from '../../drawing/shortened.ts'
import { textWidth } from '../../drawing/text-width.ts'
import {
  type Affine,
  affineIdentity,
  affineScale,
  affineThen,
  affineTranslate,
} from '../../geometry/affine.ts'
import { boxUnion, pathBounds, pointsBounds } from '../../geometry/bounds.ts'
import { polygonOf } from '../../geometry/path.ts'
import type { Units } from '../../length.ts'
import type { Pattern, TimberScrews } from '../../pattern/pattern.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { joinsNone, startWords } from '../tile/row-start.ts'
import { isRowTurned, type Tile } from '../tile/tile.ts'
import { timberNames } from '../tile/timber-names.ts'

/** `screwed`: whether all of its screws are on paper; `signed`: whether its X is on this page. */
interface ShownTimber extends Pick<TimberScrews, 'called' | 'timber'> {
  readonly screwed: boolean
  readonly signed: boolean
  /** what the page says of those of its screws that other pages have, where the timber itself had no room for it */
  readonly elsewhere?: string | undefined
}

export interface TitleFacts {
  /** of the design, any language */
  readonly title: string
  readonly pattern: Pattern
  readonly total: number
  readonly set: string
  readonly units: Units
  /** of the pattern, in the order of taping */
  readonly start: Tile
  /** the timbers that the page shows */
  readonly timbers: readonly ShownTimber[]
  /** whose correction the pages carry; null for none */
  readonly printer: string | null
}

const mapSize = { width: 32, height: 20 }
/** The map under the arrows, with air, mm. */
const stackedRoom = mapSize.height + 4
/** Room of the design's title; a longer one is cut. mm */
const titleRoom = 48
/** Ramps that a block names, and the distance of its lines, mm. */
const most = 3
const leading = 4

/** Where a page lies that joins none before it, as the map's steps say. */
const aloneWords = (tile: Tile, { start, units }: TitleFacts): readonly string[] =>
  joinsNone(tile) ? [`left arrowhead ${startWords(tile, start, units)}`] : []

/** What to do with this page, in the builder's words. */
const tapingWords = (tile: Tile, start: Tile): readonly string[] => {
  const over = tile.joints.filter((joint) => joint.over)
  if (tile.first) return ['start here']
  if (over.length === 0)
    return [`${tile.row === start.row ? 'goes on in' : 'starts'} row ${tile.row}`, 'on its snap line']
  const edges = over
    .map(({ edge }) => (edge === 'left' ? edge : edge === 'top' ? 'upper' : 'lower'))
    .join(' and ')
  // in the order of doing: said after the other page, the edge could be that one's
  return [
    `trim the ${edges} edge${over.length > 1 ? 's' : ''},`,
    `lay it over page${over.length > 1 ? 's' : ''} ${over.map((joint) => joint.neighbour).join(' and ')}`,
  ]
}

/** How the scales are read, where the page is laid over another. */
const scaleWords = 'scales: the longest tick meets 0'

/** What a block says, however it is laid out: found once for all of its forms. */
export interface TitleWords {
  readonly taping: readonly string[]
  readonly page: readonly string[]
  /** of the timbers shown: left out with the map */
  readonly timbers: readonly string[]
  readonly design: string
}

export const titleWords = (tile: Tile, facts: TitleFacts): TitleWords => {
  const { title, pattern, total, set, timbers, printer, start } = facts
  const served = pattern.serves.length > most ? most - 1 : pattern.serves.length
  const left = pattern.serves.length - served
  const missing = timbers.filter(({ screwed }) => !screwed)
  const signed = timbers.filter((timber) => timber.signed)
  return {
    taping: tapingWords(tile, start),
    page: [
      ...aloneWords(tile, facts),
      tileWords(`${tile.number} of ${total}`, `set ${set}`),
      faceWords(printer),
      ...(tile.joints.some(({ over, verniers }) => over && verniers.length > 0) ? [scaleWords] : []),
      ...pattern.serves.slice(0, served).map((part) => `${pattern.part} of ${part}`),
      ...(left > 0 ? [`and of ${left} more ramps: the map names them`] : []),
    ],
    timbers: [
      ...(signed.length > 0 ? [`X on ${timberNames(signed)}`] : []),
      ...timbers.flatMap(({ called, timber, screwed, elsewhere }) =>
        screwed && elsewhere !== undefined ? [`${called} ${timber}, ${elsewhere}`] : [],
      ),
      ...(missing.length > 0 ? [`not all screws of ${timberNames(missing)}: measure, see the map`] : []),
    ],
    design: shortened(title, letters.small, titleRoom, 'regular'),
  }
}

/** On a page that is held turned, as its own arrow says; and the arrow's room before the words, mm. */
const holdWords = 'hold the page wide, this way up'
const holdArrow = 3.4

const isWide = (tile: Tile): boolean => tile.width > tile.height

const alongWords = 'TOE to LIP'
const compassWidth = 17 + textWidth(alongWords, letters.small, 'bold')

interface Compass {
  readonly arrows: readonly Shape[]
  readonly words: Drawing
  /** mm */
  readonly height: number
}

const alongRow: Compass = {
  arrows: arrow('note', { x: 1, y: 1.2 }, { x: 16, y: 1.2 }, pens.mark, 3),
  words: [text('note', { x: 17, y: 0.2 }, letters.small, alongWords, { face: 'bold' })],
  height: 3,
}

const bothWays: Compass = {
  arrows: [...alongRow.arrows, ...arrow('note', { x: 1, y: 1.2 }, { x: 1, y: 8.2 }, pens.mark, 3)],
  words: [...alongRow.words, text('note', { x: 3.2, y: 6.2 }, letters.small, 'UP', { face: 'bold' })],
  height: 9.2,
}

/**
 * The two arrows, with the lower left corner of their box at 0,0, mm; where rows are turned the one along the row alone: from page to page
 * it leads from the toe to the lip, and up is as the page is held.
 */
const compassOf = (tile: Tile): Compass => (isRowTurned(tile) ? alongRow : bothWays)

/**
 * With a small map beside the arrows or under them, without one, or without one and as narrow as it can be: what to do stands small under
 * the number.
 */
export type TitleForm = 'mapped' | 'stacked' | 'plain' | 'narrow'

const linesOf = ({ taping, page, timbers, design }: TitleWords, form: TitleForm): readonly string[] => [
  ...(form === 'narrow' ? taping : []),
  ...page,
  ...(form === 'narrow' || form === 'plain' ? [] : timbers),
  design,
]

const headWidth = (tile: Tile, taping: readonly string[]): number => {
  const number = textWidth(String(tile.number), letters.big, 'bold')
  if (taping.length === 0) return number
  return number + 4 + Math.max(...taping.map((line) => textWidth(line, letters.word, 'bold')))
}

const linesWidth = (tile: Tile, lines: readonly string[]): number =>
  Math.max(
    ...lines.map((line) => textWidth(line, letters.small, 'regular')),
    isWide(tile) ? holdArrow + textWidth(holdWords, letters.small, 'bold') : 0,
  )

/** What a block says, and its size, mm. */
export interface TitleSize {
  readonly taping: readonly string[]
  readonly lines: readonly string[]
  readonly width: number
  readonly height: number
}

export const titleSize = (tile: Tile, said: TitleWords, form: TitleForm): TitleSize => {
  const lines = linesOf(said, form)
  const { taping } = said
  const small = linesWidth(tile, lines)
  return {
    taping,
    lines,
    width: Math.max(
      headWidth(tile, form === 'narrow' ? [] : taping),
      small + (form === 'mapped' ? 4 + mapSize.width : 0),
      form === 'stacked' ? mapSize.width : 0,
    ),
    height:
      letters.big +
      3 +
      (lines.length + (isWide(tile) ? 1 : 0)) * leading +
      2 +
      compassOf(tile).height +
      (form === 'stacked' ? stackedRoom : 0),
  }
}

const numberMarks = (tile: Tile, taping: readonly string[], top: number): Drawing => {
  const number = textWidth(String(tile.number), letters.big, 'bold')
  return [
    text('note', { x: 0, y: top - letters.big }, letters.big, String(tile.number), { face: 'bold' }),
    ...taping.map((line, i) =>
      text('note', { x: number + 4, y: top - letters.word - 0.5 - i * 7 }, letters.word, line, {
        face: 'bold',
      }),
    ),
  ]
}

/** The lines from the baseline of the first on, after how the page is held. */
const lineMarks = (tile: Tile, lines: readonly string[], first: number): Drawing => [
  ...(isWide(tile)
    ? [
        ...arrow('note', { x: 1.2, y: first - 0.6 }, { x: 1.2, y: first + 2.8 }, pens.mark, 1.6),
        text('note', { x: holdArrow, y: first }, letters.small, holdWords, { face: 'bold' }),
      ]
    : []),
  ...lines.map((line, i) =>
    text('note', { x: 0, y: first - (i + (isWide(tile) ? 1 : 0)) * leading }, letters.small, line),
  ),
]

const compassMarks = (tile: Tile, at: Affine): Drawing => {
  const { arrows, words } = compassOf(tile)
  return [shared(at, 'note', arrows), group(at, words)]
}

/** The block with its lower left corner at 0,0; mm. */
export const tileTitleBlock = (
  tile: Tile,
  title: TitleFacts,
  form: TitleForm,
  { taping, lines, width, height }: TitleSize,
): Drawing => [
  ...numberMarks(tile, form === 'narrow' ? [] : taping, height),
  ...lineMarks(tile, lines, height - letters.big - 5),
  ...compassMarks(tile, affineTranslate(0, form === 'stacked' ? stackedRoom : 0)),
  ...(form === 'mapped' || form === 'stacked'
    ? [group(affineTranslate(form === 'mapped' ? width - mapSize.width : 0, 0), miniMap(tile, title.pattern))]
    : []),
]

/** A part of the block that can be read by itself, its lower left corner at 0,0; mm. */
export interface TitlePart {
  readonly width: number
  readonly height: number
  readonly marks: Drawing
}

/** So far letters may reach below the line that the number stands on, mm. */
const below = 0.3 * letters.big

/** The number with what to do, the lines, the arrows. */
export const titleParts = (tile: Tile, said: TitleWords): readonly TitlePart[] => {
  const lines = linesOf(said, 'plain')
  const high = (lines.length + (isWide(tile) ? 1 : 0)) * leading
  return [
    {
      width: headWidth(tile, said.taping),
      height: below + letters.big,
      marks: numberMarks(tile, said.taping, below + letters.big),
    },
    { width: linesWidth(tile, lines), height: high, marks: lineMarks(tile, lines, high - leading + 1) },
    {
      width: compassWidth,
      height: compassOf(tile).height,
      marks: compassMarks(tile, affineIdentity),
    },
  ]
}

/** The whole outline, small, with this page's tile filled. */
const miniMap = (tile: Tile, pattern: Pattern): Drawing => {
  // a page may reach beyond the outline
  const box = boxUnion(pathBounds(pattern.outline), pointsBounds(tile.cell))
  const scale = Math.min(mapSize.width / (box.x1 - box.x0), mapSize.height / (box.y1 - box.y0))
  const map: Affine = affineThen(affineTranslate(-box.x0, -box.y0), affineScale(scale))
  const cell = polygonOf(tile.cell[0]!, ...tile.cell.slice(1))
  return [group(map, [fill('note', cell, 0.55), stroke('note', pattern.outline, pens.tick)])]
}
