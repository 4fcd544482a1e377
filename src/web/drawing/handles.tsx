import { useRef } from 'preact/hooks'
import { type SolvedRamp, showLength, type Units } from '../../index.ts'
import type { Actions } from '../state/actions.ts'
import { labelOf } from '../words/labels.ts'
import { type Ends, sliderValues, sliderWords } from '../words/slider-values.ts'
import { unitLength } from '../words/unit-length.ts'

interface HandlesProps {
  readonly ramp: Extract<SolvedRamp, { kind: 'quarter' }>
  readonly index: number
  readonly units: Units
  readonly ratio: number
  readonly actions: Actions
}

/** What is dragged comes in whole ones of these, mm; so far a key moves it. */
const steps = { mm: 5, in: unitLength.in / 4 } as const

/** So far the tangent is moved up or down before it leaves its height, mm on the screen's drawing. */
const stays = 4

/** The least and the most that a drag types, mm; what lies beyond is typed as a figure. */
const heights = { least: 150, most: 3000 } as const
const radii = { least: 300, most: 9000 } as const

const within = (mm: number, { least, most }: Ends): number => Math.min(most, Math.max(least, mm))

/** Two points to take hold of: the lip, which goes up and down, and the tangent, which goes to and fro, and up and down. */
export const Handles = ({ ramp, index, units, ratio, actions }: HandlesProps) => {
  const { setKey, rest } = actions
  const { design, transition } = ramp
  const { circle, tangent } = design.transition
  const { centre, lip, radius } = transition
  const base = `ramps.${index}`
  const step = steps[units]
  const typed = (mm: number): string => showLength(Math.round(mm / step) * step, units, { unit: true })
  const keys = {
    height: `${base}.height.${design.height.layer}`,
    radius: `${base}.transition.circle.${circle.layer}`,
    tangent: `${base}.transition.tangent.${tangent.layer}`,
  }
  const says = (key: string, mm: number): string => sliderWords(labelOf(key), mm, units)
  const setHeight = (mm: number): void => setKey(keys.height, typed(within(mm, heights)))
  const setRadius = (mm: number): void => setKey(keys.radius, typed(within(mm, radii)))
  const setTangent = (mm: number): void => setKey(keys.tangent, typed(within(mm, { least: -100, most: 600 })))
  // the curve of the layer that the tangent is said of
  const level = centre.y - radius[tangent.layer]
  /** A circle that runs level at a point and passes through the lip: R = (d² + h²) / 2h. */
  const radiusThrough = (away: number): number => {
    const rise = lip.y - (centre.y - radius.frame)
    const frame = (away * away + rise * rise) / (2 * rise)
    return circle.layer === 'frame' ? frame : frame - ramp.skinThickness
  }
  return (
    <>
      <Handle
        name="lip"
        words="the lip: drag it, or press up and down"
        at={{ x: lip.x * ratio, y: lip.y * ratio }}
        values={sliderValues(design.height.value, heights, units)}
        says={says(keys.height, design.height.value)}
        start={() => {
          const from = design.height.value
          return ({ dy }) => setHeight(from + dy / ratio)
        }}
        rest={rest}
        press={({ up }) => {
          if (up !== 0) setHeight(design.height.value + up * step)
        }}
      />
      <Handle
        name="tangent"
        words="the tangent, where the curve runs level: drag it, or press left and right, up and down"
        at={{ x: centre.x * ratio, y: level * ratio }}
        values={sliderValues(circle.radius, radii, units)}
        says={`${says(keys.radius, circle.radius)}, ${says(keys.tangent, tangent.height)}`}
        start={() => {
          const [away, from] = [lip.x - centre.x, tangent.height]
          return ({ dx, dy }) => {
            if (Math.abs(dy) > stays && Math.abs(dy) > Math.abs(dx)) setTangent(from + dy / ratio)
            else setRadius(radiusThrough(Math.max(50, away - dx / ratio)))
          }
        }}
        rest={rest}
        press={({ right, up }) => {
          if (right !== 0) setRadius(circle.radius - right * 2 * step)
          if (up !== 0) setTangent(tangent.height + up * step)
        }}
      />
    </>
  )
}

interface HandleProps {
  readonly name: string
  readonly words: string
  /** mm of the drawing, y up */
  readonly at: { readonly x: number; readonly y: number }
  readonly values: ReturnType<typeof sliderValues>
  /** what it stands at, in words */
  readonly says: string
  /** what a drag does from here: it hears how far it went, mm of the drawing, y up */
  readonly start: () => (by: { readonly dx: number; readonly dy: number }) => void
  readonly rest: () => void
  readonly press: (by: { readonly right: number; readonly up: number }) => void
}

const arrows: Readonly<Record<string, { readonly right: number; readonly up: number }>> = {
  ArrowUp: { right: 0, up: 1 },
  ArrowDown: { right: 0, up: -1 },
  ArrowLeft: { right: -1, up: 0 },
  ArrowRight: { right: 1, up: 0 },
}

interface Drag {
  readonly from: { readonly x: number; readonly y: number }
  readonly move: (by: { readonly dx: number; readonly dy: number }) => void
  /** pixels of a mm, as it was when it began: the drawing may be drawn to another scale meanwhile */
  readonly scale: number
}

const Handle = ({ name, words, at, values, says, start, rest, press }: HandleProps) => {
  const drag = useRef<Drag | null>(null)
  const end = (): void => {
    drag.current = null
    rest()
  }
  return (
    <g
      class="handle"
      id={`handle-${name}`}
      role="slider"
      tabindex={0}
      aria-label={words}
      aria-valuenow={values.now}
      aria-valuemin={values.least}
      aria-valuemax={values.most}
      aria-valuetext={says}
      transform={`translate(${at.x.toFixed(2)} ${(-at.y).toFixed(2)})`}
      onPointerDown={(event) => {
        const { a } = event.currentTarget.ownerSVGElement!.getScreenCTM()!
        event.currentTarget.setPointerCapture(event.pointerId)
        drag.current = { from: { x: event.clientX, y: event.clientY }, move: start(), scale: a }
      }}
      onPointerMove={(event) => {
        const held = drag.current
        held?.move({
          dx: (event.clientX - held.from.x) / held.scale,
          dy: (held.from.y - event.clientY) / held.scale,
        })
      }}
      onPointerUp={end}
      onPointerCancel={end}
      onKeyDown={(event) => {
        const by = arrows[event.key]
        if (by === undefined) return
        event.preventDefault()
        press(by)
      }}
    >
      <circle class="hold" r="4.5" />
      <circle class="knob" r="1.1" />
    </g>
  )
}
