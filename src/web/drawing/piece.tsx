import type { JSX } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'
import { kept } from '../kept.ts'

interface MarksProps {
  readonly svg: string
}

/** Marks as they are, which change as a whole or not at all. */
const Marks = kept(({ svg }: MarksProps) => {
  const group = useRef<SVGGElement>(null)
  useLayoutEffect(() => {
    group.current!.innerHTML = svg
  }, [svg])
  return <g ref={group} />
})

interface PieceProps {
  readonly svg: string
  readonly look: string
  readonly dataKey: string | undefined
  /** told from all others by this */
  readonly name: string
  /** words for its button, where it can be typed on */
  readonly typed: string | null
  readonly begin: (key: string, piece: Element) => void
}

/** A piece of the drawing; one that can be typed on is a button. */
export const Piece = kept(({ svg, look, dataKey, name, typed, begin }: PieceProps) => {
  const go = (event: JSX.TargetedEvent<SVGGElement>): void => begin(dataKey!, event.currentTarget)
  return (
    <g
      data-key={dataKey}
      data-piece={name}
      class={look}
      {...(typed !== null && {
        role: 'button',
        tabindex: 0,
        'aria-label': typed,
        onClick: go,
        onKeyDown: (event: JSX.TargetedKeyboardEvent<SVGGElement>) => {
          if (event.key !== 'Enter' && event.key !== ' ') return
          // the key is not typed into the field that opens
          event.preventDefault()
          go(event)
        },
      })}
    >
      <Marks svg={svg} />
    </g>
  )
})
