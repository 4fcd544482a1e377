import { useMemo, useRef, useState } from 'preact/hooks'
import { type SolvedRamp, sideView, solvedRamp, svgLayers, type Units, type ViewPart } from '../index.ts'
import type { View } from './model.ts'

interface SideDrawingProps {
  readonly view: View
  readonly ramp: number
  readonly setRamp: (ramp: number) => void
  readonly setKey: (path: string, value: string | null) => void
}

/** mm of the drawing for one of the ramp, so that a figure is read beside a ramp of any size */
const ratioOf = (ramp: SolvedRamp): number => 110 / Math.max(ramp.length, 900)

const paint = (grey: number): string =>
  grey === 0
    ? 'var(--ink)'
    : grey === 1
      ? 'var(--paper)'
      : `color-mix(in srgb, var(--ink) ${Math.round((1 - grey) * 100)}%, var(--paper))`

/** The side, to scale: its figures are typed on it. */
export const SideDrawing = ({ view, ramp, setRamp, setKey }: SideDrawingProps) => {
  const ramps = view.good?.solved.ramps ?? []
  const shown = ramps[ramp] ?? ramps[0]
  const solved = shown && solvedRamp(shown)
  const units: Units = view.good?.design.units ?? 'mm'
  return (
    <section class="drawing" aria-label="the side">
      {ramps.length > 1 && (
        <div class="row">
          {ramps.map(({ name }, i) => (
            <button type="button" key={name} aria-pressed={i === ramp} onClick={() => setRamp(i)}>
              {name}
            </button>
          ))}
        </div>
      )}
      {solved ? (
        <Picture ramp={solved} index={ramp} units={units} said={view.said} setKey={setKey} />
      ) : (
        <p>Nothing to draw yet: look at what stands under STOP.</p>
      )}
    </section>
  )
}

interface PictureProps {
  readonly ramp: SolvedRamp
  readonly index: number
  readonly units: Units
  readonly said: ReadonlyMap<string, string>
  readonly setKey: (path: string, value: string | null) => void
}

interface Typing {
  readonly key: string
  readonly left: number
  readonly top: number
}

const Picture = ({ ramp, index, units, said, setKey }: PictureProps) => {
  const frame = useRef<HTMLDivElement>(null)
  const [typing, setTyping] = useState<Typing | null>(null)
  const { parts, box } = useMemo(
    () => sideView({ ramp, units, ratio: ratioOf(ramp), index, mates: true }),
    [ramp, units, index],
  )
  const edge = 3
  const [width, height] = [box.x1 - box.x0 + 2 * edge, box.y1 - box.y0 + 2 * edge]
  const begin = (part: ViewPart, target: Element): void => {
    const around = frame.current?.getBoundingClientRect()
    const words = target.querySelector('text')?.getBoundingClientRect()
    if (part.key === undefined || around === undefined || words === undefined || !said.has(part.key)) return
    setTyping({
      key: part.key,
      left: words.left + words.width / 2 - around.left,
      top: words.top + words.height / 2 - around.top,
    })
  }
  return (
    <div class="picture" ref={frame}>
      <svg viewBox={`${box.x0 - edge} ${-box.y1 - edge} ${width} ${height}`}>
        <title>the ramp from its side</title>
        {parts.map((part, i) => {
          const typed = part.name === 'dimension' && part.key !== undefined && said.has(part.key)
          return (
            // biome-ignore lint/a11y/noStaticElementInteractions: a group of an svg is made a button where it can be typed
            <g
              key={i}
              class={typed ? 'typed' : part.name === 'dimension' ? 'derived' : undefined}
              {...(typed && {
                role: 'button',
                tabIndex: 0,
                'aria-label': `${part.key}, ${said.get(part.key!)}: change it`,
              })}
              onClick={(event) => begin(part, event.currentTarget)}
              onKeyDown={(event) => {
                if (event.key === 'Enter' || event.key === ' ') begin(part, event.currentTarget)
              }}
              dangerouslySetInnerHTML={{ __html: svgLayers(part.marks, 0, { paint, decimals: 2 }) }}
            />
          )
        })}
      </svg>
      {typing && (
        <input
          class="over"
          aria-label={typing.key}
          // biome-ignore lint/a11y/noAutofocus: it was asked for by the tap on its figure
          autoFocus
          autocomplete="off"
          value={said.get(typing.key) ?? ''}
          ref={(input) => {
            if (input === null) return
            input.style.left = `${typing.left}px`
            input.style.top = `${typing.top}px`
          }}
          onInput={(event) => setKey(typing.key, event.currentTarget.value)}
          onBlur={() => setTyping(null)}
          onKeyDown={(event) => {
            if (event.key === 'Enter' || event.key === 'Escape') setTyping(null)
          }}
        />
      )}
    </div>
  )
}
