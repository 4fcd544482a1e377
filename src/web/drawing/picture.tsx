import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
import {
  isCurved,
  type SetPlan,
  type SolvedRamp,
  showLength,
  sideView,
  svgLayers,
  type Units,
  type ViewPart,
} from '../../index.ts'
import { Child, childHeight } from './child.tsx'
import { Handles } from './handles.tsx'
import { PointMark, pointsAt } from './point-mark.tsx'
import type { Pointed, SetKey } from './pointing.ts'
import { Sheets } from './sheets.tsx'

interface PictureProps {
  /** what is drawn is not what the file says now */
  readonly old: boolean
  readonly solved: SolvedRamp
  readonly index: number
  readonly units: Units
  readonly said: ReadonlyMap<string, string>
  readonly setKey: SetKey
  readonly rest: () => void
  readonly plan: SetPlan | null
  readonly showPage: (page: number) => void
  readonly pointed: Pointed | null
}

interface Typing {
  readonly key: string
  readonly left: number
  readonly top: number
}

/** Pixels of a mm of the drawing: figures 2.5 mm high are then read without effort. */
const pixels = { wide: 5.2, narrow: 4.8 } as const
/** A drawing narrower than this, in pixels, is one on a phone. */
const phone = 500
/** Of the drawing, mm: around the ramp for its dimensions, above it, between it and the child. */
const room = { beside: 34, above: 34, child: 4, edge: 2 } as const

const paint = (grey: number): string =>
  grey === 0
    ? 'var(--ink)'
    : grey === 1
      ? 'var(--paper)'
      : `color-mix(in srgb, var(--ink) ${Math.round((1 - grey) * 100)}%, var(--paper))`

/** mm of the drawing for one of the ramp, so that its figures have one size on every screen. */
const ratioOf = (ramp: SolvedRamp, width: number, height: number): number => {
  const narrow = width < phone
  const scale = narrow ? pixels.narrow : pixels.wide
  const high = isCurved(ramp) ? ramp.transition.heights.deck : ramp.heights.surface
  const child = narrow ? 0 : 340
  const across = (width / scale - room.beside - (narrow ? 0 : room.child)) / (ramp.length + child)
  const up = (height / scale - room.above) / Math.max(high, narrow ? 0 : childHeight - 200)
  return Math.max(0.012, Math.min(across, up))
}

/** How much a drawing may take of the window's height. */
const shareOf = (width: number): number => (width < phone ? 0.42 : 0.62)

export const Picture = (props: PictureProps) => {
  const { old, solved, index, units, said, setKey, rest, plan, showPage, pointed } = props
  const frame = useRef<HTMLDivElement>(null)
  const over = useRef<HTMLInputElement>(null)
  const [typing, setTyping] = useState<Typing | null>(null)
  const [width, setWidth] = useState(() => (innerWidth >= 900 ? innerWidth * 0.62 : innerWidth - 32))
  useLayoutEffect(() => {
    const box = frame.current!
    const measure = (): void => setWidth(Math.round(box.clientWidth))
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(box)
    return () => watch.disconnect()
  }, [])
  useLayoutEffect(() => {
    const input = over.current
    if (input === null || typing === null) return
    // the page's policy takes no style in the markup
    input.style.left = `${typing.left}px`
    input.style.top = `${typing.top}px`
    input.focus()
    input.select()
  }, [typing])
  const ratio = ratioOf(solved, width, innerHeight * shareOf(width))
  const narrow = width < phone
  const { parts, box } = useMemo(
    () => sideView({ ramp: solved, units, ratio, index, brief: narrow }),
    [solved, units, index, ratio, narrow],
  )
  const child = box.x1 + (room.child + 190 * ratio)
  const right = narrow ? box.x1 : child + 200 * ratio
  const top = Math.max(box.y1, narrow ? 0 : childHeight * ratio)
  const left = Math.min(box.x0, isCurved(solved) ? solved.transition.centre.x * ratio - 2 : 0)
  const scale = narrow ? pixels.narrow : pixels.wide
  const things = parts.filter(({ name }) => name !== 'dimension')
  // what stands in words above has no room in a small drawing
  const dimensions = parts.filter(
    ({ name, key }) => name === 'dimension' && !(narrow && key?.endsWith('.lip')),
  )
  const besides = besidesOf(solved, index, units, dimensions, box.x1)
  const bottom = Math.min(box.y0, -6.5 - besides.length * line + 3)
  const [wide, high] = [right - left + 2 * room.edge, top - bottom + 2 * room.edge]
  const begin = (part: ViewPart, target: Element): void => {
    const around = frame.current?.getBoundingClientRect()
    const words = target.querySelector('text')?.getBoundingClientRect()
    if (part.key === undefined || around === undefined || words === undefined || !said.has(part.key)) return
    setTyping({
      key: part.key,
      left: Math.min(around.width - 72, Math.max(72, words.left + words.width / 2 - around.left)),
      top: words.top + words.height / 2 - around.top,
    })
  }
  const piece = (part: ViewPart, i: number) => {
    const typed = part.name === 'dimension' && part.key !== undefined && said.has(part.key)
    const lit = pointed !== null && pointsAt(pointed.place, part)
    return (
      <g
        key={`${part.name}${part.key ?? i}`}
        data-key={part.key}
        class={`${typed ? 'typed' : part.name === 'dimension' ? 'derived' : 'thing'}${lit ? ' lit' : ''}`}
        {...(typed && {
          role: 'button',
          tabindex: 0,
          'aria-label': `${wordsOf(part.marks)}: change ${part.key!.replace(/^ramps\.\d+\./, '').replaceAll('.', ' ')}`,
        })}
        onClick={(event) => begin(part, event.currentTarget)}
        onKeyDown={(event) => {
          if (typed && (event.key === 'Enter' || event.key === ' ')) begin(part, event.currentTarget)
        }}
        dangerouslySetInnerHTML={{ __html: svgLayers(part.marks, 0, { paint, decimals: 2 }) }}
      />
    )
  }
  return (
    <div class={old ? 'picture old' : 'picture'} ref={frame}>
      <svg
        viewBox={`${left - room.edge} ${-top - room.edge} ${wide} ${high}`}
        width={Math.min(width, wide * scale)}
        height={Math.min(width, wide * scale) * (high / wide)}
      >
        <title>the ramp from its side</title>
        {!narrow && <Child at={child} ratio={ratio} />}
        {things.map((part, i) => piece(part, i))}
        {plan && <Sheets plan={plan} ramp={solved.name} ratio={ratio} showPage={showPage} />}
        {dimensions.map((part, i) => piece(part, i))}
        {besides.map((part, i) => piece(part, i))}
        {pointed !== null && <PointMark place={pointed.place} ramp={solved} ratio={ratio} />}
        {isCurved(solved) && !old && (
          <Handles ramp={solved} index={index} units={units} ratio={ratio} setKey={setKey} rest={rest} />
        )}
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

/** Height of a line of figures below the floor, mm. */
const line = 5

/** Figures to type on that have no place in the view: that of the width, and what found no room beside the others. */
const besidesOf = (
  ramp: SolvedRamp,
  index: number,
  units: Units,
  dimensions: readonly ViewPart[],
  right: number,
): readonly ViewPart[] => {
  const show = (mm: number): string => showLength(mm, units)
  const { design } = ramp
  const wanted: readonly (readonly [key: string, words: string])[] = [
    ['width', `${show(ramp.width)} wide`],
    ...(isCurved(design)
      ? ([
          [
            `transition.circle.${design.transition.circle.layer}`,
            `R ${show(design.transition.circle.radius)}`,
          ],
          ['toe', `toe ${show(design.toe)}`],
          [design.back.from, `${design.back.from} ${show(design.back.value)}`],
          [`height.${design.height.layer}`, `${design.height.layer} ${show(design.height.value)}`],
          ...(design.coping ? [['coping.outside', `pipe ${show(design.coping.outside)}`] as const] : []),
        ] as const)
      : []),
  ]
  return wanted
    .map(([key, words]) => [`ramps.${index}.${key}`, words] as const)
    .filter(([key]) => !dimensions.some((part) => part.key === key))
    .map(([key, words], i) => ({
      name: 'dimension',
      key,
      marks: [
        {
          kind: 'text',
          layer: 'note',
          text: words,
          at: { x: right, y: -6.5 - i * line },
          size: 2.5,
          angle: 0,
          align: 'right',
          face: 'regular',
        },
      ],
    }))
}

/** What stands in a piece of the drawing to be read. */
const wordsOf = (marks: ViewPart['marks']): string =>
  marks
    .flatMap((mark) =>
      mark.kind === 'text' ? [mark.text] : mark.kind === 'group' ? [wordsOf(mark.marks)] : [],
    )
    .join(' ')
