import type { Cover } from '../page/cover/cover.ts'
import { defaultMargins, defaultOverlap, largerPaper } from '../page/sheet/paper.ts'
import type { Sheet } from '../page/sheet/sheet.ts'

/** More pages than anyone tapes together. */
const mostPages = 2000

/** Asked before any page is drawn: null, or the number and whatever of this job can be changed to need fewer. */
export const tooManyPages = (
  tiles: number,
  { paper, margins }: Sheet,
  overlap: number,
  cover: Cover,
  ramps: number,
): string | null => {
  if (tiles <= mostPages) return null
  const usual = defaultMargins(paper.name)
  const paperName = largerPaper(paper.name)
  const ways = [
    ...(paperName ? [`larger paper (--paper ${paperName})`] : []),
    ...((['top', 'right', 'bottom', 'left'] as const).some((side) => margins[side] > usual[side])
      ? ['smaller margins']
      : []),
    ...(overlap > defaultOverlap ? ['a smaller overlap'] : []),
    ...(cover === 'whole' ? ['--cover line'] : cover === 'line' ? ['--cover ribbon'] : []),
    ...(ramps > 1 ? ['fewer ramps in one design'] : []),
  ]
  const last = ways.length > 1 ? ` or ${ways.at(-1)}` : ways[0]
  return `this job takes ${tiles} pages to tape, more than ${mostPages}; take ${ways.length > 1 ? ways.slice(0, -1).join(', ') : ''}${last}`
}
