import type { Cover } from '../page/cover/cover.ts'
import { defaultMargins, defaultOverlap, largerPaper } from '../page/sheet/paper.ts'
import type { Sheet } from '../page/sheet/sheet.ts'
import { pageSides } from '../printer/page-sides.ts'

/** More pages than anyone tapes together. */
const mostPages = 2000

/**
 * Asked before any page is laid: null, or the number and whatever of this job can be changed to need fewer. `strips`: pages of story
 * strips beside the tiles.
 */
export const tooManyPages = (
  tiles: number,
  { paper, margins }: Sheet,
  overlap: number,
  cover: Cover,
  ramps: number,
  strips = 0,
): string | null => {
  if (tiles + strips <= mostPages) return null
  const usual = defaultMargins(paper.name)
  const paperName = largerPaper(paper.name)
  const ways = [
    ...(paperName ? [`larger paper (--paper ${paperName})`] : []),
    ...(pageSides.some((side) => margins[side] > usual[side]) ? ['smaller margins'] : []),
    ...(overlap > defaultOverlap ? ['a smaller overlap'] : []),
    ...(cover === 'whole' ? ['--cover line'] : cover === 'line' ? ['--cover ribbon'] : []),
    ...(ramps > 1 ? ['fewer ramps in one design'] : []),
    ...(strips > 0 ? ['no strips (without --strips)'] : []),
  ]
  const last = ways.length > 1 ? ` or ${ways.at(-1)}` : ways[0]
  const pages = strips > 0 ? `${tiles} pages to tape and ${strips} of strips` : `${tiles} pages to tape`
  return `this job takes ${pages}, more than ${mostPages}; take ${ways.length > 1 ? ways.slice(0, -1).join(', ') : ''}${last}`
}
