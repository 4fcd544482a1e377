import type { Design, Sheet } from '../../design/design.ts'
import { sameSheet, sideSheet } from '../../design/panel-sizes.ts'
import { type Finding, warn } from '../check/check.ts'
import { measured, same } from '../check/offer.ts'
import { sheetWords } from '../check/sheet-words.ts'

/** Saw blades cut so wide; common practice, no source. mm */
const blades = { least: 1, most: 6 } as const

/** What the stock says that cannot well be meant: a saw no blade cuts with, a panel that nothing is sawn from. */
export const stockFindings = ({ stock, ramps, units }: Design): readonly Finding[] => {
  const show = (mm: number): string => measured(mm, units)
  const { kerf } = stock
  const used = ramps.flatMap((ramp): readonly Sheet[] => [
    sideSheet(ramp),
    ...ramp.skin,
    ...(ramp.deckBoard ? [ramp.deckBoard] : []),
    ...(ramp.runOut?.kind === 'sheet' ? [ramp.runOut.sheet] : []),
  ])
  const idle = [...stock.panels, ...stock.offcuts]
    .map(({ sheet }) => sheet)
    .filter((sheet) => !used.some((other) => sameSheet(sheet, other)))
  const words = [...new Set(idle.map((sheet) => sheetWords(sheet, units)))]
  return [
    ...(kerf < blades.least - same || kerf > blades.most + same
      ? [
          warn(
            'kerf',
            `a saw cut of ${show(kerf)} was typed: blades cut ${show(blades.least)} to ${show(blades.most)} wide; saw into scrap and measure yours`,
          ),
        ]
      : []),
    ...(words.length > 0
      ? [
          warn(
            'stock-idle',
            `nothing is sawn from ${words.join(', ')}; the parts are of ${[...new Set(used.map((sheet) => sheetWords(sheet, units)))].join(', ')}`,
          ),
        ]
      : []),
  ]
}
