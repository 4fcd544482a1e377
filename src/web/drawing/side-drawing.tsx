import { useRef } from 'preact/hooks'
import {
  isCurved,
  type SetPlan,
  type SolvedRamp,
  showAngle,
  showLength,
  solvedRamp,
  steepnessWord,
} from '../../index.ts'
import { kept } from '../kept.ts'
import type { Actions } from '../state/actions.ts'
import type { View } from '../state/model.ts'
import type { Alarm, Pointed } from '../state/use-pointing.ts'
import { Picture } from './picture.tsx'

interface SideDrawingProps {
  readonly view: View
  readonly ramp: number
  readonly setRamp: (ramp: number) => void
  readonly actions: Actions
  /** where the pages lie; null while they are not known */
  readonly plan: SetPlan | null
  readonly showPage: (page: number) => void
  readonly pointed: Pointed | null
  readonly alarms: readonly Alarm[]
  /** whether undo leads to a design */
  readonly back: boolean
}

/** The side, to scale: its figures are typed on it. */
export const SideDrawing = kept((props: SideDrawingProps) => {
  const { view, ramp, setRamp } = props
  const ramps = view.good?.drawn.ramps ?? []
  const shown = ramps[ramp] ?? ramps[0]
  const now = shown ? solvedRamp(shown) : null
  const last = useRef<SolvedRamp | null>(null)
  if (now !== null) last.current = now
  // a ramp that cannot be drawn keeps its last drawing, greyed
  const solved = now ?? (last.current?.name === shown?.name ? last.current : null)
  // what cannot be read is not what is drawn
  const unread = view.problems.length > 0
  const units = view.good?.design.units ?? 'mm'
  const show = (mm: number): string => showLength(mm, units)
  return (
    <section class="drawing" aria-label="the side">
      {ramps.length > 1 && (
        <div class="row tabs">
          {ramps.map(({ name }, i) => (
            <button type="button" key={name} aria-pressed={i === ramp} onClick={() => setRamp(i)}>
              {name}
            </button>
          ))}
        </div>
      )}
      {now === null || unread ? (
        solved && (
          <p class="answer">
            <b>drawing: last good design</b>
          </p>
        )
      ) : (
        <p class="answer">
          {showLength(isCurved(now) ? now.transition.heights.deck : now.heights.surface, units, {
            unit: true,
          })}{' '}
          high, {show(now.length)} long
          <span>, {show(now.width)} wide</span>
          {isCurved(now) && (
            <>
              , <span>lip </span>
              {showAngle(now.transition.lipAngle)}, <b>{steepnessWord(now.transition.lipAngle)}</b>
            </>
          )}
          <span>; lengths in {units === 'mm' ? 'mm' : 'inches'}</span>
        </p>
      )}
      {solved && view.good ? (
        <Picture
          {...props}
          old={now === null || unread}
          solved={solved}
          index={ramps[ramp] ? ramp : 0}
          units={view.good.design.units}
          said={view.said}
          problems={view.problems}
        />
      ) : (
        <p>
          Nothing to draw yet: look at what stands under STOP.
          {props.back ? ' Undo brings back the last design that could be read.' : ''}
        </p>
      )}
    </section>
  )
})
