import { useCallback, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
import {
  isCurved,
  type Problem,
  type SetPlan,
  type SolvedRamp,
  showLength,
  sideView,
  svgLayers,
  type Units,
  type ViewPart,
} from '../../index.ts'
import type { Actions } from '../state/actions.ts'
import type { Alarm, Pointed } from '../state/use-pointing.ts'
import { labelOf, pathOfKey } from '../words/labels.ts'
import { Child, childHeight, childWords } from './child.tsx'
import { type Drawn, useGlow } from './glow.ts'
import { Handles } from './handles.tsx'
import { Piece } from './piece.tsx'
import { AlarmMark, alarmLeft, alarmPoints, PointMark, pointsAt } from './point-mark.tsx'
import { Sheets } from './sheets.tsx'
import { headPoints, wordPoints } from './word-points.ts'

interface PictureProps {
  /** what is drawn is not what the file says now */
  readonly old: boolean
  readonly solved: SolvedRamp
  readonly index: number
  readonly units: Units
  readonly said: ReadonlyMap<string, string>
  readonly problems: readonly Problem[]
  readonly actions: Actions
  readonly plan: SetPlan | null
  readonly showPage: (page: number) => void
  readonly pointed: Pointed | null
  /** where a rider can fall */
  readonly alarms: readonly Alarm[]
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
/** A window lower than this, in pixels, is a phone on its side, or 200 %. */
const low = 560
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

/** Of the drawing as the page will lay it out, so that it need not be drawn twice as it opens. */
const likelyWidth = (): number => {
  const inner = document.documentElement.clientWidth - 32
  return Math.round(innerWidth >= 900 ? Math.min((inner - 16) * 0.625, inner - 16 - 360) : inner)
}

/** How much a drawing may take of the window's height; of a low one, where nothing stays in sight, more. */
const shareOf = (width: number): number => (innerHeight <= low ? 0.85 : width < phone ? 0.42 : 0.62)

export const Picture = (props: PictureProps) => {
  const { old, solved, index, units, said, problems, actions, plan, showPage, pointed, alarms } = props
  const frame = useRef<HTMLDivElement>(null)
  const over = useRef<HTMLInputElement>(null)
  const [typing, setTyping] = useState<Typing | null>(null)
  const [width, setWidth] = useState(likelyWidth)
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
  const child = box.x1 + room.child + Math.max(190 * ratio, childWords.half)
  const right = narrow ? box.x1 : child + Math.max(200 * ratio, childWords.half)
  const top = Math.max(box.y1, narrow ? 0 : childHeight * ratio)
  const left = Math.min(
    box.x0,
    isCurved(solved) ? solved.transition.centre.x * ratio - 2 : 0,
    ...alarms.map((alarm) => alarmLeft(alarm, solved, ratio)),
  )
  const scale = narrow ? pixels.narrow : pixels.wide
  const pieces = useMemo(() => {
    // what stands in words above has no room in a small drawing
    const dimensions = parts.filter(
      ({ name, key }) => name === 'dimension' && !(narrow && key?.endsWith('.lip')),
    )
    const besides = besidesOf(solved, index, units, dimensions, box.x1)
    const counts = new Map<string, number>()
    return [...parts.filter(({ name }) => name !== 'dimension'), ...dimensions, ...besides].map((part) => {
      const called = `${part.name} ${part.key ?? ''}`
      const nth = counts.get(called) ?? 0
      counts.set(called, nth + 1)
      const dimension = part.name === 'dimension'
      return {
        part,
        dimension,
        key: `${called} ${nth}`,
        svg: svgLayers(part.marks, 0, { paint, decimals: 2 }),
        words: dimension ? wordsOf(part.marks) : null,
        beside: besides.includes(part),
      }
    })
  }, [parts])
  const words = useMemo(
    () => [
      ...wordPoints(pieces.flatMap(({ part }) => part.marks)),
      ...pieces.flatMap(({ part, dimension }) => (dimension ? headPoints(part.marks) : [])),
      ...alarms.flatMap((alarm) => alarmPoints(alarm, solved, ratio)),
    ],
    [pieces, alarms],
  )
  const besides = pieces.flatMap(({ part, beside }) => (beside ? wordPoints(part.marks) : []))
  const bottom = Math.min(box.y0, ...besides.map(({ y }) => y - 2.5))
  const [wide, high] = [right - left + 2 * room.edge, top - bottom + 2 * room.edge]
  useGlow(frame, `${index} ${narrow}`, ratio, pieces satisfies readonly Drawn[])
  const mayType = useRef(said)
  mayType.current = said
  const begin = useCallback((key: string, piece: Element): void => {
    const around = frame.current?.getBoundingClientRect()
    const words = piece.querySelector('text')?.getBoundingClientRect()
    if (around === undefined || words === undefined || !mayType.current.has(key)) return
    actions.rest()
    setTyping({
      key,
      left: Math.min(around.width - 72, Math.max(72, words.left + words.width / 2 - around.left)),
      top: words.top + words.height / 2 - around.top,
    })
  }, [])
  const wrong = typing !== null && problems.some(({ path }) => pathOfKey(path) === typing.key)
  /** One goes on with the figure: without the focus the keyboard begins at the top again. */
  const end = (key: string): void => {
    frame.current?.querySelector<SVGElement>(`.typed[data-key="${key}"]`)?.focus({ preventScroll: true })
    setTyping(null)
  }
  const pieceOf = ({ part, dimension, key, svg, words }: (typeof pieces)[number]) => {
    const typed = dimension && part.key !== undefined && said.has(part.key)
    const look = typed ? 'typed' : dimension ? 'derived' : 'thing'
    const lit = pointed !== null && pointsAt(pointed.place, part) ? ' lit' : ''
    const alarm = alarms.some(({ place }) => pointsAt(place, part)) ? ' alarm' : ''
    return (
      <Piece
        key={key}
        name={key}
        dataKey={part.key}
        look={`${look}${lit}${alarm}`}
        svg={svg}
        typed={typed ? `${words}: change ${labelOf(part.key!)}` : null}
        begin={begin}
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
        {!narrow && <Child at={child} ratio={ratio} units={units} />}
        {pieces.filter(({ dimension }) => !dimension).map(pieceOf)}
        {plan && <Sheets plan={plan} ramp={solved} ratio={ratio} words={words} showPage={showPage} />}
        {pieces.filter(({ dimension }) => dimension).map(pieceOf)}
        {alarms.map((alarm) => (
          <AlarmMark key={alarm.words} alarm={alarm} ramp={solved} ratio={ratio} />
        ))}
        {pointed !== null && <PointMark place={pointed.place} ramp={solved} ratio={ratio} />}
        {isCurved(solved) && (
          <Handles ramp={solved} index={index} units={units} ratio={ratio} actions={actions} />
        )}
      </svg>
      {typing && (
        <input
          class="over"
          aria-label={labelOf(typing.key)}
          aria-invalid={wrong}
          autocomplete="off"
          value={said.get(typing.key) ?? ''}
          ref={over}
          onInput={(event) => actions.setKey(typing.key, event.currentTarget.value)}
          onBlur={() => setTyping(null)}
          onKeyDown={(event) => {
            if (event.key === 'Escape') actions.takeBack(typing.key)
            // what is wrong stays to be mended, or taken back
            if (event.key === 'Escape' || (event.key === 'Enter' && !wrong)) end(typing.key)
          }}
        />
      )}
    </div>
  )
}

/** Height of a line of figures below the floor, mm. */
const line = 5
/** Width of a letter there at most, mm. */
const letter = 1.8

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
          ...(design.coping
            ? [
                [
                  'coping.outside',
                  `pipe ${showLength(design.coping.outside, units, { decimals: 1 })}`,
                ] as const,
              ]
            : []),
        ] as const)
      : []),
  ]
  const missing = wanted
    .map(([key, words]) => [`ramps.${index}.${key}`, words] as const)
    .filter(([key]) => !dimensions.some((part) => part.key === key))
  // below what stands there already
  const from = right - Math.max(...missing.map(([, words]) => words.length)) * letter
  const under = wordPoints(dimensions.flatMap(({ marks }) => marks)).filter(({ x, y }) => y < 0 && x > from)
  const top = Math.min(-6.5, ...under.map(({ y }) => y - line))
  return missing.map(([key, words], i) => ({
    name: 'dimension',
    key,
    marks: [
      {
        kind: 'text',
        layer: 'note',
        text: words,
        at: { x: right, y: top - i * line },
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
