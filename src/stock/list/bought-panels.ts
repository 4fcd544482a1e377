import type { Units } from '../../design/design.ts'
import { type Box, pathBounds } from '../../geometry/bounds.ts'
import { sheetWords } from '../../ramp/check/sheet-words.ts'
import type { SheetPanels } from '../panel/panels.ts'
import type { SheetPart } from '../sheet-part.ts'
import type { BoughtPanels } from './list.ts'

/** Panels that are not in the garage already, by sheet and size. */
export const boughtPanels = (sheets: readonly SheetPanels[], units: Units): readonly BoughtPanels[] =>
  sheets.flatMap(({ sheet, panels, parts }) => {
    const bought = panels.filter(({ there }) => !there)
    const sizes = [...new Set(bought.map(({ size }) => size.join()))]
    return sizes.map((key): BoughtPanels => {
      const own = bought.filter(({ size }) => size.join() === key)
      const held = own.flatMap(({ pieces }) =>
        pieces.flatMap(({ part, under }) => (under ? [part, under] : [part])),
      )
      return {
        sheet,
        name: sheetWords(sheet, units),
        size: own[0]!.size,
        count: own.reduce((sum, { clamped }) => sum + clamped, 0),
        rests: own.flatMap(({ rest }) => (rest ? [sides(rest)] : [])),
        glued: parts.some(({ part }) => part === 'plate'),
        sawn: parts.filter((part) => held.includes(part)).map(sizeOf),
        backs: own.flatMap(({ pieces }) =>
          pieces.filter(({ part, over }) => part.faced && over).map(({ part }) => part.mark),
        ),
      }
    })
  })

/** Up the ramp, and across it. */
const sizeOf = ({ outline }: SheetPart): readonly [number, number] => {
  const { x0, y0, x1, y1 } = pathBounds(outline)
  return [y1 - y0, x1 - x0]
}

const sides = ({ x0, y0, x1, y1 }: Box): readonly [number, number] => [
  Math.min(x1 - x0, y1 - y0),
  Math.max(x1 - x0, y1 - y0),
]
