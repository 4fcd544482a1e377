import { enough, type JointRoom, type Room } from './joint-room.ts'

/** A joint line that gets its marks, mm. `snaps`: shares of it at which a row's snap line crosses it; `pairHalf`: radius of its pair mark. */
export interface MarkedLine {
  readonly length: number
  readonly snaps: readonly number[]
  readonly pairHalf: number
  readonly room: JointRoom
}

/** What is more by no more than this is no more, mm. */
export const hair = 1e-6

/** Whether a share lies so far from each of others. */
export const isOff = (length: number, t: number, others: readonly number[], mm: number): boolean => {
  for (let i = 0; i < others.length; i++) if (Math.abs(t - others[i]!) * length < mm) return false
  return true
}

const anywhere = (): boolean => true

/** Of those that are free the share with the most room; the first of equals, as none has more than enough. */
export const bestOf = (
  shares: readonly number[],
  reach: number,
  room: Room,
  isFree: (t: number) => boolean = anywhere,
): number | undefined => {
  let kept: number | undefined
  let most = Number.NEGATIVE_INFINITY
  for (const t of shares) {
    if (most >= enough - hair) break
    if (!isFree(t)) continue
    const own = room(t, reach, most + hair)
    if (kept !== undefined && own <= most + hair) continue
    kept = t
    most = own
  }
  return kept
}
