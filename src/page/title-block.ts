import { arrow } from '../drawing/arrow.ts'
import { type Drawing, fill, group, stroke, text } from '../drawing/drawing.ts'
import { textWidth } from '../drawing/text-width.ts'
import { type Affine, affineScale, affineThen, affineTranslate } from '../geometry/affine.ts'
import { boxUnion, pathBounds, pointsBounds } from '../geometry/bounds.ts'
import { polygonOf } from '../geometry/path.ts'
import { pointToward } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { letters, pens } from '../pattern/pens.ts'
import type { Tile } from './tile.ts'

export interface TitleFacts {
  readonly pattern: Pattern
  readonly total: number
  readonly set: string
  /** whose correction the pages carry; null for none */
  readonly printer: string | null
}

const mapSize = { width: 32, height: 20 }
const height = 38

/** What to do with this page, in the builder's words. */
export const tapingWords = (tile: Tile): readonly string[] => {
  const over = tile.joints.filter((joint) => joint.over)
  if (tile.first) return ['start here']
  if (over.length === 0) return [`starts row ${tile.row}`, 'on its snap line']
  const edges = over.map((joint) => (joint.edge === 'left' ? 'left' : 'lower')).join(' and ')
  return [
    `lies over page${over.length > 1 ? 's' : ''} ${over.map((joint) => joint.neighbour.number).join(' and ')}`,
    `trim its ${edges} edge${over.length > 1 ? 's' : ''}`,
  ]
}

const facts = (tile: Tile, { pattern, total, set, printer }: TitleFacts): readonly string[] => [
  `tile ${tile.name} · ${tile.number} of ${total} · set ${set}`,
  ...pattern.serves.map((part) => `${pattern.part} of ${part}`),
  `OUTSIDE FACE up${printer === null ? '' : ` · corrected for ${printer}`}`,
]

/** Size of the block, mm. */
export const titleSize = (
  tile: Tile,
  title: TitleFacts,
): { readonly width: number; readonly height: number } => {
  const words = Math.max(...tapingWords(tile).map((line) => textWidth(line, letters.word, 'bold')))
  const small = Math.max(...facts(tile, title).map((line) => textWidth(line, letters.small, 'regular')))
  const number = textWidth(String(tile.number), letters.big, 'bold')
  return { width: Math.max(number + 4 + words, small + 4 + mapSize.width), height }
}

/** The block with its lower left corner at 0,0; mm. */
export const titleBlock = (tile: Tile, title: TitleFacts): Drawing => {
  const size = titleSize(tile, title)
  const number = textWidth(String(tile.number), letters.big, 'bold')
  const words = tapingWords(tile)
  const turn = Math.atan2(tile.frame[1], tile.frame[0])
  const from = { x: 1, y: 1 }
  const along = pointToward(from, turn, 15)
  const up = pointToward(from, turn + Math.PI / 2, 7)
  return [
    text('note', { x: 0, y: height - letters.big }, letters.big, String(tile.number), { face: 'bold' }),
    ...words.map((line, i) =>
      text('note', { x: number + 4, y: height - letters.word - 0.5 - i * 7 }, letters.word, line, {
        face: 'bold',
      }),
    ),
    ...facts(tile, title)
      .slice(0, 4)
      .map((line, i) => text('note', { x: 0, y: height - letters.big - 5 - i * 4 }, letters.small, line)),
    ...arrow('note', from, along, pens.mark, 3),
    ...arrow('note', from, up, pens.mark, 3),
    text('note', pointToward(along, turn, 1), letters.small, 'TOE to LIP', { angle: turn, face: 'bold' }),
    text('note', pointToward(up, turn - 0.9, 2.4), letters.small, 'UP', { angle: turn, face: 'bold' }),
    group(affineTranslate(size.width - mapSize.width, 0), miniMap(tile, title.pattern)),
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
