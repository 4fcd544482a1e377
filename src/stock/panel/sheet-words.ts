import type { Units } from '../../design/design.ts'
import { wordList } from '../../length/word-list.ts'
import { showLength } from '../../length.ts'
import { sheetWords } from '../../ramp/check/sheet-words.ts'
import type { SheetPart } from '../sheet-part.ts'
import type { LaidPanel, LaidSheet } from './panels.ts'

/** Short side first, as panels are sold: `1220 × 2440`. */
export const sizeWords = ([short, long]: readonly [number, number], units: Units): string =>
  `${showLength(short, units)} × ${showLength(long, units)}`

/** What a sheet gives and takes, in one line: `18 plywood: both sides from one 1220 × 2440, 28 to spare`. */
export const sheetLine = (sheets: LaidSheet, trim: number, units: Units): string => {
  const { sheet, parts, panels, lost } = sheets
  const laid = parts.filter((part) => !lost.includes(part))
  const spare = spareStrip(panels, trim)
  const words = [
    ...(laid.length > 0 ? [`${partWords(laid)} from ${wordList(panelWords(panels, units))}`] : []),
    ...(lost.length > 0 ? [`no panel holds ${wordList(lost.map(({ mark }) => mark))}`] : []),
  ]
  return `${sheetWords(sheet, units)}: ${words.join('; ')}${spare === null ? '' : `, ${showLength(spare, units)} to spare`}`
}

/** What is left of the panel's width beside curved sides that lie on one panel alone; null for all else. mm */
const spareStrip = (panels: readonly LaidPanel[], trim: number): number | null => {
  const [only] = panels
  if (panels.length !== 1 || only!.pieces.every(({ second }) => second === null)) return null
  return Math.max(0, only!.size[0] - trim - Math.max(...only!.pieces.map(({ box }) => box.y1)))
}

const partWords = (parts: readonly SheetPart[]): string => {
  // pieces of one side are one side
  const count = (own: readonly SheetPart[], part: SheetPart['part']): number =>
    new Set(own.flatMap((one) => (one.part === part ? [one.piece?.of ?? one.mark] : []))).size
  const several = new Set(parts.map(({ ramp }) => ramp)).size > 1
  const some = (n: number, one: string, many: string): readonly string[] =>
    n === 0 ? [] : [n === 1 ? one : `${n} ${many}`]
  const walls = (own: readonly SheetPart[]): readonly string[] => {
    const sides = count(own, 'side')
    return [
      ...(sides === 2 && !several ? ['both sides'] : some(sides, 'a side', 'sides')),
      ...some(count(own, 'rib'), 'a rib', 'ribs'),
    ]
  }
  const pieces = parts.filter(({ piece }) => piece)
  return wordList([
    ...walls(parts.filter(({ piece }) => !piece)),
    ...(pieces.length > 0 ? [`${wordList(walls(pieces))} in ${pieces.length} pieces`] : []),
    ...some(count(parts, 'plate'), 'a plate', 'plates'),
    ...some(count(parts, 'skin'), 'a piece of skin', 'pieces of skin'),
    ...some(count(parts, 'deck-board'), 'a deck board', 'pieces of deck board'),
    ...some(count(parts, 'run-out'), 'a run-out sheet', 'pieces of run-out'),
  ])
}

const panelWords = (panels: readonly LaidPanel[], units: Units): readonly string[] => {
  const kinds = new Map<string, number>()
  for (const { size, there, clamped } of panels) {
    const name = `${sizeWords(size, units)}${there ? ' that is there' : ''}`
    kinds.set(name, (kinds.get(name) ?? 0) + clamped)
  }
  return [...kinds].map(([name, count]) => (count === 1 ? `one ${name}` : `${count} of ${name}`))
}
