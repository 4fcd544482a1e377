import { spread } from '../../drafting/dimension/spread.ts'
import type { DraftStyle } from '../../drafting/line-types.ts'
import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { pathOf } from '../../geometry/path.ts'

/** Short names in a row above a level edge, each with a line to its place; pushed apart where places are close. Paper mm. */
export const namesBeside = (
  names: readonly { readonly at: number; readonly name: string }[],
  edge: number,
  { layer, size, lines }: DraftStyle,
): Drawing => {
  const sorted = [...names].sort((a, b) => a.at - b.at)
  const wide = Math.max(0, ...sorted.map(({ name }) => textWidth(name, size, 'bold'))) + 0.6 * size
  const places = spread(
    sorted.map(({ at }) => at),
    wide,
  )
  return sorted.flatMap(({ at, name }, i) => [
    stroke(
      layer,
      pathOf(
        { x: at, y: edge + 0.3 * size },
        { x: at, y: edge + 0.8 * size },
        { x: places[i]!, y: edge + 1.7 * size },
      ),
      lines.thin,
    ),
    text(layer, { x: places[i]!, y: edge + 2.1 * size }, size, name, { face: 'bold', align: 'middle' }),
  ])
}
