import { countWords } from '../../length/count-words.ts'
import { type Cover, covers } from './cover.ts'
import type { CoverCounts } from './pattern-covers.ts'

/** So few pages are taped in no time: then the whole outline needs no crosses to be set out. */
const few = 4

/** A ribbon must be set out by crosses alone; it is worth that from so many pages saved. */
const worthTurning = 3

export const isWorthTurning = (line: number, ribbon: number): boolean => line - ribbon >= worthTurning

/** The way a careful builder would take, and why. */
export const chooseCover = (counts: CoverCounts): { readonly cover: Cover; readonly why: string } => {
  const { whole, line, ribbon } = counts
  const others = (chosen: Cover): string =>
    covers
      .filter((cover) => cover !== chosen)
      .map((cover) => `${cover} ${counts[cover]}`)
      .join(', ')
  if (line === 1 && whole > 1)
    return { cover: 'line', why: `one sheet carries all that is traced, without a joint (${others('line')})` }
  if (whole <= few || whole <= line + 1)
    return { cover: 'whole', why: `the whole outline takes only ${pages(whole)} (${others('whole')})` }
  if (isWorthTurning(line, ribbon))
    return {
      cover: 'ribbon',
      why: `turned rows save ${pages(line - ribbon)}: ${pages(ribbon)} follow the curve (${others('ribbon')}); set out their crosses with care`,
    }
  return {
    cover: 'line',
    why: `${pages(line)} carry all that is traced (${others('line')}); straight edges are the panel's own`,
  }
}

const pages = (count: number): string => countWords(count, 'page')
