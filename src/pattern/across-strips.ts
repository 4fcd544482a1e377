import type { Units } from '../design/design.ts'
import { kindTraits } from '../design/kind-traits.ts'
import { numberList, wordList } from '../length/word-list.ts'
import type { SolvedRamp } from '../ramp/ramp.ts'
import type { FixedRow, Layer } from '../ramp/skin/layer.ts'
import { endMark, gapMarks, markFigure, rowMarks, type StoryStrip, type StripRow } from './story-strip.ts'

/** Where the screws of a row lie across the ramp: two layers to a strip, one on each of its edges. Zero is the left side. */
export const acrossStrips = (ramp: SolvedRamp, units: Units): readonly StoryStrip[] => {
  const layers = ramp.skin.filter(({ rows }) => rows.length > 0)
  return Array.from({ length: Math.ceil(layers.length / 2) }, (_, i): StoryStrip => {
    const two = layers.slice(2 * i, 2 * i + 2)
    const [first, second] = two.map((layer) => acrossRow(layer, ramp, units))
    return {
      name: `${ramp.name}/strip-across-${i + 1}`,
      kind: 'across',
      ramps: ramp.name,
      what: acrossName(two.map(({ layer }) => `layer ${layer}`)),
      aside: null,
      straight: true,
      length: ramp.width,
      zero: `left side's outer face; ${leftOf(ramp)}`,
      rows: second ? [first!, second] : [first!],
      rings: 'a screw',
      onTicks: null,
      notes: [],
    }
  })
}

/** A strip by its rows. */
export const acrossName = (rows: readonly string[]): string => `across, ${rows.join(' and ')}`

/** Which side is the left one. */
export const leftOf = ({ kind }: SolvedRamp): string => `left is as seen from ${kindTraits[kind].start}`

const acrossRow = (layer: Layer, { width, kind }: SolvedRamp, units: Units): StripRow => {
  const [common, ...others] = likeRows(layer, units)
  const [usual] = common!
  const unlikeRows = others.map((rows) => ({
    where: rowNames(layer, rows, kindTraits[kind].sheetEnd, units),
    row: rows[0],
  }))
  const but = unlikeRows.map(({ where, row }) => `${where}: ${unlike(row, usual, units)}`)
  return {
    edge: `LAYER ${layer.layer}`,
    words: ['the screws of each row', ...(but.length > 0 ? [`but ${but.join('; ')}`] : [])].join(', '),
    not: unlikeRows.map(({ where, row }) => ({ where, places: unlikePlaces(row, usual, units) })),
    marks: [
      ...rowMarks([
        ...gapMarks(layer.widths, () => 'seam', units),
        ...usual.across.map((at) => ({
          at,
          sign: 'ring' as const,
          label: markFigure(at, units),
          figure: null,
        })),
      ]),
      endMark(width, units),
    ],
  }
}

const figuresOf = ({ across }: FixedRow, units: Units): readonly string[] =>
  across.map((at) => markFigure(at, units))

type AlikeRows = [FixedRow, ...FixedRow[]]

/** Rows whose figures are alike, most rows first: they differ where another screw stands in the way. */
const likeRows = ({ rows }: Layer, units: Units): readonly AlikeRows[] => {
  const groups = new Map<string, AlikeRows>()
  for (const row of rows) {
    const key = figuresOf(row, units).join()
    const own = groups.get(key)
    if (own) own.push(row)
    else groups.set(key, [row])
  }
  return [...groups.values()].sort((a, b) => b.length - a.length)
}

/** By their studs; those whose stud has a row of another kind too, and those between studs, by their distance. */
const rowNames = (layer: Layer, own: readonly FixedRow[], end: string, units: Units): string => {
  const whole = ({ stud }: FixedRow): boolean =>
    stud !== null && layer.rows.every((row) => row.stud !== stud || own.includes(row))
  const studs = [...new Set(own.filter(whole).map(({ stud }) => stud! + 1))]
  const rest = own.filter((row) => !whole(row)).map(({ at }) => markFigure(at, units))
  return [
    ...(studs.length > 0 ? [`at ${numberList('stud', studs)}`] : []),
    ...(rest.length > 0 ? [`${wordList(rest)} from the ${end}`] : []),
  ].join(' and ')
}

/** Screws that one of two rows has and the other has not. */
const unlikePlaces = (one: FixedRow, other: FixedRow, units: Units): readonly number[] => {
  const missing = (of: FixedRow, from: FixedRow): readonly number[] => {
    const figures = figuresOf(from, units)
    return of.across.filter((at) => !figures.includes(markFigure(at, units)))
  }
  return [...missing(one, other), ...missing(other, one)]
}

/** What a row has in place of what. */
const unlike = (row: FixedRow, common: FixedRow, units: Units): string => {
  const [own, usual] = [figuresOf(row, units), figuresOf(common, units)]
  const more = own.filter((one) => !usual.includes(one)).join(', ')
  const less = usual.filter((one) => !own.includes(one)).join(', ')
  if (more === '') return `not ${less}`
  return less === '' ? `also ${more}` : `${more} in place of ${less}`
}
