import { crossArm } from '../tile-joints.ts'
import { bestOf, isOff, type MarkedLine } from './shares.ts'

/** Where a cross is tried, shares from its end of the joint: as a rule, else a little farther in, and where all of these lie on a line. */
const usual = [0.1, 0.14, 0.06]
const farther = [0.18, 0.22]
const far = [0.26, 0.3, 0.34, 0.38, 0.03]

/** Between the middle of a cross and the snap line, mm. */
const snapApart = 10.5

/** How much of its arms along the joint a cross has its room for, mm. */
const reach = 4
/** A line nearer to the middle of a cross runs through its arms; about the middle, mm. */
const crossRoom = 4.3
const middle = 0.1

/** Crosses near both ends of a joint. */
export const crossShares = ({ length, snaps, room: { all, least } }: MarkedLine): readonly number[] =>
  [0, 1].map((end) => {
    const share = (t: number): number => Math.abs(end - t)
    const offSnap = (shares: readonly number[]): readonly number[] =>
      shares.map(share).filter((t) => isOff(length, t, snaps, snapApart))
    const first = offSnap(usual)
    const usualPlace = bestOf(first, reach, all)
    if (usualPlace !== undefined && least(usualPlace, reach) > crossArm && all(usualPlace, reach) > 0)
      return usualPlace
    const others = [...first, ...offSnap(farther)]
    const found = bestOf(others.length > 0 ? others : [...usual, ...farther].map(share), reach, all)!
    if (least(found, middle) > crossRoom && all(found, reach) > 0) return found
    // far from the end rather than on a line
    return bestOf([found, ...offSnap(far)], reach, all)!
  })
