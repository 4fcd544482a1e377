import { affineApply, type SetPlan } from '../../index.ts'

interface SheetsProps {
  readonly plan: SetPlan
  readonly ramp: string
  readonly ratio: number
  readonly showPage: (page: number) => void
}

/** The pages over the side, like sheets on plywood. Twins share a pattern, which bears the first one's name. */
export const Sheets = ({ plan, ramp, ratio, showPage }: SheetsProps) => {
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
            role="button"
            tabindex={0}
            aria-label={`page ${tile} as it will print`}
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
