import { useRef } from 'preact/hooks'
import {
  editDesign,
  isCurved,
  type SetPlan,
  type SolvedRamp,
  showLength,
  solvedRamp,
  steepnessWord,
} from '../../index.ts'
import type { View } from '../state/model.ts'
import { Picture } from './picture.tsx'
import type { Pointed, SetKey } from './pointing.ts'

interface SideDrawingProps {
  readonly view: View
  readonly ramp: number
  readonly setRamp: (ramp: number) => void
  readonly setKey: SetKey
  readonly setText: (text: string) => void
  /** what was typed or dragged is done with */
  readonly rest: () => void
  /** where the pages lie; null while they are not known */
  readonly plan: SetPlan | null
  readonly showPage: (page: number) => void
  readonly pointed: Pointed | null
}

/** The side, to scale: its figures are typed on it. */
export const SideDrawing = (props: SideDrawingProps) => {
  const { view, ramp, setRamp, setKey, setText } = props
  const ramps = view.good?.drawn.ramps ?? []
  const shown = ramps[ramp] ?? ramps[0]
  const now = shown ? solvedRamp(shown) : null
  const last = useRef<SolvedRamp | null>(null)
  if (now !== null) last.current = now
  // a ramp that cannot be drawn keeps its last drawing, greyed
  const solved = now ?? (last.current?.name === shown?.name ? last.current : null)
  const show = (mm: number): string => showLength(mm, view.good?.design.units ?? 'mm')
  return (
    <section class="drawing" aria-label="the side">
      <div class="row tabs">
        {ramps.length > 1 &&
          ramps.map(({ name }, i) => (
            <button type="button" key={name} aria-pressed={i === ramp} onClick={() => setRamp(i)}>
              {name}
            </button>
          ))}
        {now && solved && isCurved(solved) && (
          <p class="answer">
            <span>
              {show(solved.transition.heights.deck)} high, {show(solved.length)} long, {show(solved.width)}{' '}
              wide,{' '}
            </span>
            lip {((solved.transition.lipAngle * 180) / Math.PI).toFixed(1)}°,{' '}
            <b>{steepnessWord(solved.transition.lipAngle)}</b>
          </p>
        )}
        <button type="button" id="add-ramp" onClick={() => addRamp(view, ramp, setText)}>
          add one like it
        </button>
        {ramps.length > 1 && (
          <button
            type="button"
            id="remove-ramp"
            onClick={() => {
              setRamp(0)
              setKey(`ramps.${ramp}`, null)
            }}
          >
            remove {ramps[ramp]?.name}
          </button>
        )}
      </div>
      {solved && now === null && <p class="answer">as it was before something stopped it</p>}
      {solved && view.good ? (
        <Picture
          {...props}
          old={now === null}
          solved={solved}
          index={ramps[ramp] ? ramp : 0}
          units={view.good.design.units}
          said={view.said}
        />
      ) : (
        <p>Nothing to draw yet: look at what stands under STOP.</p>
      )}
    </section>
  )
}

/** A ramp like this one at the end of the file; each needs a name then. */
const addRamp = (view: View, ramp: number, setText: (text: string) => void): void => {
  const names = view.good?.design.ramps.map(({ name }) => name) ?? []
  const own = names[ramp] ?? 'ramp'
  const free = [2, 3, 4, 5, 6, 7, 8, 9].map((n) => `${own} ${n}`).find((name) => !names.includes(name))
  if (free === undefined) return
  let text = view.text
  if (view.said.get(`ramps.${ramp}.name`) === undefined) text = editDesign(text, `ramps.${ramp}.name`, own)
  text = editDesign(text, `ramps.${names.length}.name`, free)
  setText(editDesign(text, `ramps.${names.length}.like`, own))
}
