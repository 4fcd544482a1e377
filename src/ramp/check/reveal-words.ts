import type { QuarterDesign } from '../../design/design.ts'

/** What a pipe stands out above. */
export const deckTop = ({ deckBoard }: Pick<QuarterDesign, 'deckBoard'>): string =>
  deckBoard ? 'the deck board' : "the side's top"

/**
 * How far a pipe stands out, in words: `8 above the deck board, 6 out of the ridden face`. Without a board the deck is the
 * side's top. `show` gets lengths without their sign, mm.
 */
export const revealWords = (
  { up, out }: { readonly up: number; readonly out: number },
  design: Pick<QuarterDesign, 'deckBoard'>,
  show: (mm: number) => string,
  and = ', ',
): string =>
  `${show(Math.abs(up))} ${up < 0 ? 'below' : 'above'} ${deckTop(design)}${and}` +
  `${show(Math.abs(out))} ${out < 0 ? 'behind' : 'out of'} the ridden face`
