import type { DeckTimber } from '../../ramp/frame/deck-timbers.ts'
import type { Timber } from '../../ramp/frame/timber.ts'

/** What a timber behind the lip is for. */
export const roleWords: Readonly<Record<DeckTimber['role'], string>> = {
  pipe: 'under the pipe',
  backing: 'backing behind the pipe',
  deck: 'under the deck board',
  back: 'back bottom corner',
  wheels: 'for the wheels',
}

export const liesWords = ({ lies }: Pick<Timber, 'lies'>): string => (lies === 'edge' ? 'on edge' : 'flat')

/** What it is ripped to, where it is not used as bought; empty where it is. */
export const rippedWords = (
  { lies, width, depth }: Timber,
  section: readonly [number, number],
  fine: (mm: number) => string,
): string => {
  const [thin, wide] = [Math.min(...section), Math.max(...section)]
  const [own, other] = lies === 'edge' ? [width, depth] : [depth, width]
  if (own < thin - 0.05) return `ripped to ${fine(own)}`
  return other < wide - 0.05 ? `ripped to ${fine(other)}` : ''
}
