import type { Design, Units } from '../../design/design.ts'
import { pathBounds } from '../../geometry/bounds.ts'
import { wordList } from '../../length/word-list.ts'
import { offer } from '../../ramp/check/offer.ts'
import { sheetWords } from '../../ramp/check/sheet-words.ts'
import type { Parts } from '../parts.ts'
import type { SheetPart } from '../sheet-part.ts'
import type { Known } from './known.ts'
import { type LaidSheet, layPanels } from './panels.ts'
import { sizeWords } from './sheet-words.ts'

/** A layout of more is no help in a garage. */
export const mostPieces = 500

/** Every part on its panel; or why that is not to be had: too many pieces, or panels too small for some. */
export const sheetsOf = (
  design: Design,
  { sheets: parts, timbers }: Parts,
  known?: Known,
):
  | { readonly sheets: readonly LaidSheet[] }
  /** `laid`: what can be had all the same */
  | { readonly faults: readonly string[]; readonly laid: readonly LaidSheet[] } => {
  const count = parts.length + timbers.length
  if (count > mostPieces)
    return {
      faults: [
        `the design is sawn into ${count} pieces; a layout takes ${mostPieces} at most: split the design`,
      ],
      laid: [],
    }
  const sheets = layPanels(design, parts, known)
  const small = sheets.filter(({ lost }) => lost.length > 0)
  return small.length === 0
    ? { sheets }
    : {
        faults: small.map((own) => smallWords(own, design.units)),
        laid: sheets.filter((own) => !small.includes(own)),
      }
}

/** `9 plywood: layer 1 of outer (K1) needs a panel of 1104 × 2436 or more …` */
const smallWords = ({ sheet, lost, sizes }: LaidSheet, units: Units): string => {
  const needs = lost.map((part) => `${part.words} of ${part.ramp} (${part.mark}) ${needWords(part, units)}`)
  return (
    `${sheetWords(sheet, units)}: the panel of your stock (${sizes.map((size) => sizeWords(size, units)).join(', ')}) is too small for ` +
    `${wordList(needs)}; say larger panels in \`stock: panels\``
  )
}

/** How large a panel must be at least for a part, its long side first where that must lie along the grain. */
const needWords = ({ outline, grain }: SheetPart, units: Units): string => {
  const { x0, y0, x1, y1 } = pathBounds(outline)
  const { atLeast } = offer(units)
  const [along, across] = grain === 'y' ? [y1 - y0, x1 - x0] : [x1 - x0, y1 - y0]
  const sizes = [atLeast(Math.min(along, across)), atLeast(Math.max(along, across))].join(' × ')
  const turned = grain !== null && along < across
  return `of ${sizes}${turned ? ', with the grain along its short side' : ''}`
}
