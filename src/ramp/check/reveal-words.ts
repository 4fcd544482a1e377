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
): string => {
  const far = (mm: number, less: string, more: string): string =>
    show(Math.abs(mm)) === show(0) ? 'flush with' : `${show(Math.abs(mm))} ${mm < 0 ? less : more}`
  return `${far(up, 'below', 'above')} ${deckTop(design)}${and}${far(out, 'behind', 'out of')} the ridden face`
}
