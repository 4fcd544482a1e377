import type { Units } from '../../index.ts'

/** mm */
export const childHeight = 1250

/** Of the words under it, mm of the drawing: their size, how far they lie below the floor, half of what they take. */
export const childWords = { size: 3, below: 4.6, half: 11 } as const

interface ChildProps {
  readonly at: number
  readonly ratio: number
  readonly units: Units
}

/** A child of about eight, to feel the size. */
export const Child = ({ at, ratio, units }: ChildProps) => (
  <>
    <g
      class="child"
      transform={`translate(${at.toFixed(2)} 0) scale(${ratio.toFixed(5)} ${(-ratio).toFixed(5)})`}
    >
      <title>a child 1.25 m tall</title>
      <circle cx="0" cy="1140" r="110" />
      <path d="M-120 1000 Q0 1040 120 1000 L190 560 L140 550 L100 800 L95 560 L110 0 L20 0 L0 480 L-20 0 L-110 0 L-95 560 L-100 800 L-140 550 L-190 560 Z" />
    </g>
    <text class="child-height" x={at} y={childWords.below} text-anchor="middle" font-size={childWords.size}>
      child {units === 'mm' ? '1.25 m' : '4 ft 1 in'}
    </text>
  </>
)
