import { useCallback, useMemo, useRef, useState } from 'preact/hooks'
import type { Check, Problem } from '../../index.ts'
import { type PlaceName, placeOfCheck } from '../words/check-places.ts'
import { hurts } from '../words/hurts.ts'
import { goToProblem } from './go-to-problem.ts'
import type { View } from './model.ts'

/** What the drawing points at. */
export interface Pointed {
  readonly place: PlaceName
  readonly ramp: string | null
}

/** Where a rider can fall, told in the drawing as long as it is so. */
export interface Alarm {
  readonly place: PlaceName
  readonly words: string
}

/** Its functions are the same as long as the page is open. */
export interface Pointing {
  readonly pointed: Pointed | null
  readonly pointField: (place: PlaceName | null) => void
  readonly point: (place: PlaceName | null, of: string | null) => void
  /** to where a problem is mended */
  readonly goTo: (problem: Problem) => void
}

/** What is pointed at lies in a ramp, which is shown then. */
export const usePointing = (view: View, setRamp: (ramp: number) => void): Pointing => {
  const [pointed, setPointed] = useState<Pointed | null>(null)
  const shown = useRef(view)
  shown.current = view
  const pointField = useCallback((place: PlaceName | null): void => {
    setPointed(place === null ? null : { place, ramp: null })
  }, [])
  const point = useCallback((place: PlaceName | null, of: string | null): void => {
    setPointed(place === null ? null : { place, ramp: of })
    const at = shown.current.good?.design.ramps.findIndex(({ name }) => name === of) ?? -1
    if (place !== null && at >= 0) setRamp(at)
  }, [])
  const goTo = useCallback((problem: Problem): void => {
    const at = Number(/^ramps\[(\d+)\]/.exec(problem.path)?.[1] ?? Number.NaN)
    if (shown.current.good?.design.ramps[at] !== undefined) setRamp(at)
    // once the fields of that ramp are there
    setTimeout(() => goToProblem(problem))
  }, [])
  return { pointed, pointField, point, goTo }
}

const noAlarms: readonly Alarm[] = []

/** What an alarm says in the drawing. */
const alarmWords: Readonly<Record<string, string>> = { tips: 'DANGER: tips over' }

/** Of the ramp called so; the same list as long as it and `heard` are, from which `found` comes. */
export const useAlarms = (
  heard: object,
  found: readonly Check[],
  name: string | undefined,
): readonly Alarm[] =>
  useMemo(() => {
    const own = found.filter((check) => hurts(check) && check.ramp === name)
    return own.length === 0
      ? noAlarms
      : own.flatMap(({ id }) => {
          const place = placeOfCheck(id)
          return place === null ? [] : [{ place, words: alarmWords[id] ?? 'DANGER: too weak' }]
        })
  }, [heard, name])
