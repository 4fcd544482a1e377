import type { Units } from '../design/design.ts'
import { type Drawing, group, text } from '../drawing/drawing.ts'
import { paragraph } from '../drawing/paragraph.ts'
import type { PageKind } from '../drawing/set-plan.ts'
import { affineTranslate } from '../geometry/affine.ts'
import type { Point } from '../geometry/point.ts'
import { mapPicture } from '../page/pages/map-picture.ts'
import { tapingSteps } from '../page/pages/taping-steps.ts'
import { datumFigures } from '../page/proof/datum-figures.ts'
import { surveyLength } from '../page/proof/survey.ts'
import type { PageSet } from '../page/set/draft.ts'
import type { TileGroup } from '../page/set/tile-groups.ts'

/** A picture as wide as a phone and as high as it must be, mm. */
export interface PhoneMap {
  readonly drawing: Drawing
  readonly width: number
  readonly height: number
}

const width = 90
const margin = 3
const inner = width - 2 * margin
const sizes = { head: 3.6, body: 2.5 } as const
const pictureStyle = { width: inner, height: inner, number: 6, name: 2.4 }

/** The maps of a set for the phone in the garage: where each page lies, how to lay it, what to check. */
export const phoneMap = (title: string, set: PageSet, units: Units): PhoneMap => {
  let y = -margin
  const marks: Drawing[] = []
  for (const part of set.groups) {
    const map = groupMap({ x: margin, y }, title, set, part, units)
    marks.push(map.marks)
    y = map.bottom - 4
  }
  const height = -y
  return { drawing: [group(affineTranslate(0, height), marks.flat())], width, height }
}

/** Along a layer or across some; a pipe's strip marks no skin. */
const isSkinStrip = (pattern: string): boolean => /\/strip-(across-)?\d+$/.test(pattern)

const groupMap = (
  topLeft: Point,
  title: string,
  { code, plan }: PageSet,
  part: TileGroup,
  units: Units,
): { readonly marks: Drawing; readonly bottom: number } => {
  const { pattern, tiles, datums, survey } = part
  const has = (kind: PageKind): boolean =>
    plan.pages.some((page) => page.kind === kind || page.holds?.includes(kind))
  const stepFacts = {
    units,
    cover: plan.cover,
    pattern,
    tiles,
    datums,
    trial: has('trial'),
    strips: plan.pages.some(({ places }) => places.some(({ pattern }) => isSkinStrip(pattern))),
  }
  const marks: Drawing[] = []
  let y = topLeft.y
  const write = (
    words: string,
    indent = 0,
    size: number = sizes.body,
    face: 'regular' | 'bold' = 'regular',
  ) => {
    const style = { layer: 'note', width: inner - indent, size, face } as const
    const lines = paragraph({ x: topLeft.x + indent, y }, words, style)
    marks.push(lines.marks)
    y = lines.bottom - 0.5
  }
  write(title, 0, sizes.head, 'bold')
  write(
    `${pattern.part} of ${pattern.serves.join('; ')}. Pages ${tiles[0]!.number} to ${tiles.at(-1)!.number} on ${plan.paper.name}, set ${code}.${units === 'in' ? ' Lengths in inches: + is 1/32 more, – 1/32 less.' : ''}`,
  )
  const drawn = mapPicture(inner, part, pictureStyle, units)
  y -= 2 + drawn.height
  marks.push([group(affineTranslate(topLeft.x, y), drawn.marks)])
  y -= 3
  tapingSteps(stepFacts).forEach((step, i) => {
    marks.push([
      text('note', { x: topLeft.x + 2.5, y: y - sizes.body }, sizes.body, `${i + 1}`, {
        face: 'bold',
        align: 'right',
      }),
    ])
    write(step, 5)
  })
  y -= 1
  write('Check on the taped paper, and again on the wood:', 0, sizes.body, 'bold')
  for (const { words, value, tolerance } of survey)
    write(`${surveyLength({ value, tolerance }, units)}  ${words}`, 5)
  if (datums.length > 0) {
    y -= 1
    write('Crosses, straight from these edges and their corner:', 0, sizes.body, 'bold')
    for (const datum of datums) write(`${datum.letter}: ${datumFigures(datum.at, units).join(', ')}`, 5)
  }
  return { marks: marks.flat(), bottom: y }
}
