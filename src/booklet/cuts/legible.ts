import { alsoDrawn, isClear, nothingDrawn } from '../../drafting/clearance.ts'
import { type Drawing, group, type Mark } from '../../drawing/drawing.ts'
import { affineTranslate } from '../../geometry/affine.ts'

/** A mark where it lies, null where it has no place. */
interface Kept {
  readonly mark: Mark | null
  readonly grouped: boolean
}

/** Numbers in their rings over all lines, names where they lie clear of lines and of each other; a small one that has no such place stays where it is, or is left to the table, as which face is up always is: of all pieces or of none. */
export const legible = (marks: Drawing, without: 'stays' | 'goes'): Drawing => {
  const ringed = marks.flatMap((mark, i) =>
    mark.kind === 'fill' && mark.grey === 1 ? [i, i + 1, i + 2] : [],
  )
  const rings = ringed.map((i) => marks[i]!)
  const others = marks.filter((_, i) => !ringed.includes(i))
  let clearance = alsoDrawn(
    nothingDrawn,
    [...others.filter(({ kind }) => kind !== 'text' && kind !== 'group'), ...rings],
    'thing',
  )
  const kept = others.flatMap((mark): readonly Kept[] => {
    if (mark.kind !== 'text' && mark.kind !== 'group') return [{ mark, grouped: false }]
    const grouped = mark.kind === 'group'
    const isMark = mark.kind === 'text' && mark.size >= leastMark
    const first = (isMark ? nudges : hairs)
      .map(([x, y]): Mark => (x === 0 && y === 0 ? mark : group(affineTranslate(x, y), [mark])))
      .find((way) => isClear(clearance, [way]))
    const placed = first ?? (isMark || (mark.kind === 'text' && without === 'stays') ? mark : null)
    if (placed === null) return grouped ? [{ mark: null, grouped }] : []
    clearance = alsoDrawn(clearance, [placed], 'thing')
    return [{ mark: placed, grouped }]
  })
  const all = kept.every(({ mark }) => mark !== null)
  return [
    ...kept.flatMap(({ mark, grouped }) => (mark === null || (grouped && !all) ? [] : [mark])),
    ...rings,
  ]
}

/** How far a mark may move to lie clear, mm; the least first. */
const around = (fars: readonly number[]): readonly (readonly [number, number])[] =>
  fars.flatMap((far) =>
    far === 0
      ? [[0, 0] as const]
      : Array.from(
          { length: 12 },
          (_, i) => [far * Math.cos((i * Math.PI) / 6), far * Math.sin((i * Math.PI) / 6)] as const,
        ),
  )
const nudges = around([0, 3, 6, 9, 13])
/** Small names stay by what they name, and in their piece. */
const hairs = around([0, 0.7, 1.4, 2.1, 3, 4, 5, 6])

/** Marks of pieces are this high at least, mm, and are never left out. */
const leastMark = 3
