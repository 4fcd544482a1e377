import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
import {
  affineApply,
  editDesign,
  type SetPlan,
  type SolvedRamp,
  sideView,
  solvedRamp,
  svgLayers,
  type Units,
  type ViewPart,
} from '../index.ts'
import type { View } from './model.ts'

interface SideDrawingProps {
  readonly view: View
  readonly ramp: number
  readonly setRamp: (ramp: number) => void
  readonly setKey: (path: string, value: string | null) => void
  readonly setText: (text: string) => void
  /** where the pages lie; null while they are not known */
  readonly plan: SetPlan | null
  readonly showPage: (page: number) => void
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
export const SideDrawing = ({ view, ramp, setRamp, setKey, setText, plan, showPage }: SideDrawingProps) => {
  const ramps = view.good?.solved.ramps ?? []
  const shown = ramps[ramp] ?? ramps[0]
  const solved = shown && solvedRamp(shown)
  const units: Units = view.good?.design.units ?? 'mm'
  return (
    <section class="drawing" aria-label="the side">
      <div class="row">
        {ramps.length > 1 &&
          ramps.map(({ name }, i) => (
            <button type="button" key={name} aria-pressed={i === ramp} onClick={() => setRamp(i)}>
              {name}
            </button>
          ))}
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
      {solved ? (
        <Picture
          ramp={solved}
          index={ramp}
          units={units}
          said={view.said}
          setKey={setKey}
          plan={plan}
          showPage={showPage}
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

interface PictureProps {
  readonly ramp: SolvedRamp
  readonly index: number
  readonly units: Units
  readonly said: ReadonlyMap<string, string>
  readonly setKey: (path: string, value: string | null) => void
  readonly plan: SetPlan | null
  readonly showPage: (page: number) => void
}

interface Typing {
  readonly key: string
  readonly left: number
  readonly top: number
}

const Picture = ({ ramp, index, units, said, setKey, plan, showPage }: PictureProps) => {
  const frame = useRef<HTMLDivElement>(null)
  const over = useRef<HTMLInputElement>(null)
  const [typing, setTyping] = useState<Typing | null>(null)
  useLayoutEffect(() => {
    const input = over.current
    if (input === null || typing === null) return
    // the page's policy takes no style in the markup
    input.style.left = `${typing.left}px`
    input.style.top = `${typing.top}px`
    input.focus()
    input.select()
  }, [typing])
  const ratio = ratioOf(ramp)
  const { parts, box } = useMemo(() => sideView({ ramp, units, ratio, index }), [ramp, units, index, ratio])
  const edge = 3
  // the child stands clear of the figures
  const child = box.x1 + 260 * ratio
  const [right, top] = [child + 220 * ratio, Math.max(box.y1, childHeight * ratio)]
  const [width, height] = [right - box.x0 + 2 * edge, top - box.y0 + 2 * edge]
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
      <svg viewBox={`${box.x0 - edge} ${-top - edge} ${width} ${height}`}>
        <title>the ramp from its side</title>
        {parts.map((part, i) => {
          const typed = part.name === 'dimension' && part.key !== undefined && said.has(part.key)
          return (
            <g
              key={i}
              data-key={part.key}
              class={typed ? 'typed' : part.name === 'dimension' ? 'derived' : undefined}
              {...(typed && {
                role: 'button',
                tabindex: 0,
                'aria-label': `${wordsOf(part.marks)}: change ${part.key!.replace(/^ramps\.\d+\./, '').replaceAll('.', ' ')}`,
              })}
              onClick={(event) => begin(part, event.currentTarget)}
              onKeyDown={(event) => {
                if (event.key === 'Enter' || event.key === ' ') begin(part, event.currentTarget)
              }}
              dangerouslySetInnerHTML={{ __html: svgLayers(part.marks, 0, { paint, decimals: 2 }) }}
            />
          )
        })}
        <Child at={child} ratio={ratio} />
        {plan && <Sheets plan={plan} ramp={ramp.name} ratio={ratio} showPage={showPage} />}
      </svg>
      {typing && (
        <input
          class="over"
          aria-label={typing.key}
          autocomplete="off"
          value={said.get(typing.key) ?? ''}
          ref={over}
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

/** What stands in a piece of the drawing to be read. */
const wordsOf = (marks: ViewPart['marks']): string =>
  marks
    .flatMap((mark) =>
      mark.kind === 'text' ? [mark.text] : mark.kind === 'group' ? [wordsOf(mark.marks)] : [],
    )
    .join(' ')

/** mm */
const childHeight = 1250

/** A child of about eight, to feel the size. */
const Child = ({ at, ratio }: { readonly at: number; readonly ratio: number }) => (
  <g
    class="child"
    transform={`translate(${at.toFixed(2)} 0) scale(${ratio.toFixed(5)} ${(-ratio).toFixed(5)})`}
  >
    <title>a child 1.25 m tall</title>
    <circle cx="0" cy="1140" r="110" />
    <path d="M-120 1000 Q0 1040 120 1000 L190 560 L140 550 L100 800 L95 560 L110 0 L20 0 L0 480 L-20 0 L-110 0 L-95 560 L-100 800 L-140 550 L-190 560 Z" />
  </g>
)

/** Inside an svg there is no element for it. */
const buttonOf = (name: string) => ({ role: 'button', tabindex: 0, 'aria-label': name }) as const

interface SheetsProps {
  readonly plan: SetPlan
  readonly ramp: string
  readonly ratio: number
  readonly showPage: (page: number) => void
}

/** The pages over the side, like sheets on plywood. Twins share a pattern, which bears the first one's name. */
const Sheets = ({ plan, ramp, ratio, showPage }: SheetsProps) => {
  const tiles = plan.pages.filter(({ kind }) => kind === 'tile')
  const own = tiles.filter(({ pattern }) => pattern?.split('/')[0] === ramp)
  return (
    <g class="sheets">
      {own.map(({ page, tile, toPattern, window }) => {
        const [x0, y0, x1, y1] = window!
        const corners = [
          [x0, y0],
          [x1, y0],
          [x1, y1],
          [x0, y1],
        ].map(([x, y]) => affineApply(toPattern!, { x: x!, y: y! }))
        const middle = {
          x: corners.reduce((sum, { x }) => sum + x, 0) / 4,
          y: corners.reduce((sum, { y }) => sum + y, 0) / 4,
        }
        return (
          <g
            key={page}
            {...buttonOf(`page ${tile} as it will print`)}
            onClick={() => showPage(page)}
            onKeyDown={(event) => {
              if (event.key === 'Enter' || event.key === ' ') showPage(page)
            }}
          >
            <polygon
              points={corners
                .map(({ x, y }) => `${(x * ratio).toFixed(2)},${(-y * ratio).toFixed(2)}`)
                .join(' ')}
            />
            <text
              x={middle.x * ratio}
              y={-middle.y * ratio}
              text-anchor="middle"
              dominant-baseline="central"
              font-size="4"
            >
              {tile}
            </text>
          </g>
        )
      })}
    </g>
  )
}
