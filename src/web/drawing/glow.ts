import { useEffect, useRef } from 'preact/hooks'

/** A piece as it was drawn when nothing was being typed. */
export interface Drawn {
  readonly key: string
  readonly svg: string
  /** what stands in it to be read; null for a thing, which is told by its outline */
  readonly words: string | null
}

interface Still {
  /** whose pieces these are: those of another ramp, or of a drawing of another kind, are not compared */
  readonly of: string
  readonly ratio: number
  readonly pieces: ReadonlyMap<string, Drawn>
}

/** ms without a change until what moved is looked for */
const pause = 200
/** ms */
const glows = 900
/** mm of the drawing; less is not seen to move */
const seen = 0.2

const numbersOf = (svg: string): readonly number[] =>
  [...svg.matchAll(/ d="([^"]*)"/g)].flatMap(([, path]) => path!.match(/-?[\d.]+/g) ?? []).map(Number)

/** Whether an outline is another one: not only drawn larger or smaller. */
export const outlineMoved = (before: string, after: string, scale: number): boolean => {
  if (before === after) return false
  const [was, is] = [numbersOf(before), numbersOf(after)]
  return was.length !== is.length || was.some((value, i) => Math.abs(value * scale - is[i]!) > seen)
}

const movedOf = (still: Still, now: Still): readonly string[] =>
  [...now.pieces.values()]
    .filter(({ key, svg, words }) => {
      const before = still.pieces.get(key)
      if (before === undefined) return true
      return words === null ? outlineMoved(before.svg, svg, now.ratio / still.ratio) : before.words !== words
    })
    .map(({ key }) => key)

/** When a change is made, what it moved glows for a moment; not for those who want nothing to move. */
export const useGlow = (
  drawing: { readonly current: Element | null },
  of: string,
  ratio: number,
  pieces: readonly Drawn[],
): void => {
  const last = useRef<Still | null>(null)
  useEffect(() => {
    const now: Still = { of, ratio, pieces: new Map(pieces.map((piece) => [piece.key, piece])) }
    const still = last.current
    if (still === null || still.of !== of) {
      last.current = now
      return
    }
    const timer = setTimeout(() => {
      last.current = now
      if (matchMedia('(prefers-reduced-motion: reduce)').matches) return
      const moved = new Set(movedOf(still, now))
      const marks = [...(drawing.current?.querySelectorAll('[data-piece]') ?? [])].filter((piece) =>
        moved.has(piece.getAttribute('data-piece')!),
      )
      for (const mark of marks)
        for (const line of mark.querySelectorAll('path, text'))
          line.animate(
            line.tagName === 'text'
              ? [{ fill: 'var(--glow)' }, { fill: 'var(--glow)', offset: 0.4 }, {}]
              : [{ stroke: 'var(--glow)' }, { stroke: 'var(--glow)', offset: 0.4 }, {}],
            { duration: glows, easing: 'ease-out' },
          )
    }, pause)
    return () => clearTimeout(timer)
  }, [pieces])
}
