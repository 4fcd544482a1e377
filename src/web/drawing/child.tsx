/** mm */
export const childHeight = 1250

/** A child of about eight, to feel the size. */
export const Child = ({ at, ratio }: { readonly at: number; readonly ratio: number }) => (
  <g
    class="child"
    transform={`translate(${at.toFixed(2)} 0) scale(${ratio.toFixed(5)} ${(-ratio).toFixed(5)})`}
  >
    <title>a child 1.25 m tall</title>
    <circle cx="0" cy="1140" r="110" />
    <path d="M-120 1000 Q0 1040 120 1000 L190 560 L140 550 L100 800 L95 560 L110 0 L20 0 L0 480 L-20 0 L-110 0 L-95 560 L-100 800 L-140 550 L-190 560 Z" />
  </g>
)
