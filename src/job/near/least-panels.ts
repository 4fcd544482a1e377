import type { Design } from '../../design/design.ts'
import { panelSizes, sameSheet } from '../../design/panel-sizes.ts'
import { segmentAt } from '../../geometry/at.ts'
import { type Path, pathSegments } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { doubleArea } from '../../geometry/polygon/outer-polygon.ts'
import { same } from '../../ramp/check/offer.ts'
import type { SheetGroup } from '../../stock/panel/panels.ts'
import { drawnSize } from '../../stock/panel/piece.ts'
import { blankOf } from '../../stock/panel/place/shape.ts'

/** No layout takes fewer, of parts of which so much is left: pieces do not lie over each other. */
export const leastByArea = ({ stock, units }: Design, { sheet, parts }: SheetGroup, left = 1): number => {
  if (stock.offcuts.some((piece) => sameSheet(piece.sheet, sheet))) return 0
  const largest = Math.max(...panelSizes(sheet, stock, units).map(([short, long]) => short * long))
  const sum = parts.reduce((all, { outline }) => all + Math.abs(doubleArea(corners(outline))) / 2, 0)
  // chords of a hollow curve take in a little more than it does
  return Math.max(1, Math.ceil((left * sum) / largest - 0.01))
}

/** No layout takes fewer of rectangles that are more than half as wide as the panel: they lie in a row along it. */
export const leastInRows = ({ stock, units }: Design, { sheet, parts }: SheetGroup): number => {
  if (stock.offcuts.some((piece) => sameSheet(piece.sheet, sheet))) return 0
  const sizes = panelSizes(sheet, stock, units)
  const [width, length] = [0, 1].map((side) => Math.max(...sizes.map((size) => size[side]!)))
  const wide = parts
    .map(({ outline }) => blankOf(outline))
    .filter(({ square }) => square)
    .map((blank) => {
      const { width: across, height } = drawnSize({ blank })
      return Math.min(across, height)
    })
    .filter((least) => least > (width! - stock.kerf) / 2 + same)
  if (wide.length === 0) return 0
  const inRow = Math.floor((length! + stock.kerf + same) / (Math.min(...wide) + stock.kerf))
  return Math.ceil(wide.length / Math.max(1, inRow))
}

/** Those of an arc no farther apart than a hundredth of it. */
const corners = (outline: Path): readonly Point[] =>
  pathSegments(outline).flatMap((segment) =>
    segment.kind === 'line'
      ? [segment.from]
      : Array.from({ length: 100 }, (_, i) => segmentAt(segment, i / 100)),
  )
