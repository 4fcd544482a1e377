import type { View } from './model.ts'

interface SideDrawingProps {
  readonly view: View
  readonly ramp: number
  readonly setRamp: (ramp: number) => void
  readonly setKey: (path: string, value: string | null) => void
}

/** The side, to scale: it is the form. */
export const SideDrawing = ({ view, ramp, setRamp }: SideDrawingProps) => {
  const ramps = view.good?.design.ramps ?? []
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
      <svg viewBox="0 0 100 60" role="img" aria-label="side of the ramp" />
    </section>
  )
}
