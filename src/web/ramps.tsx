import { removeRamp } from '../index.ts'
import { kept } from './kept.ts'
import type { Actions } from './state/actions.ts'
import type { View } from './state/model.ts'
import { withTwin } from './state/twin.ts'
import { storedInside } from './words/stored-inside.ts'

interface RampsProps {
  readonly view: View
  readonly ramp: number
  readonly setRamp: (ramp: number) => void
  readonly actions: Actions
}

/** Another ramp, or one less. */
export const Ramps = kept(({ view, ramp, setRamp, actions }: RampsProps) => {
  const { read } = view
  // those of the text, drawn or not: a figure that it leaves open may never be found
  const ramps = (read ?? view.good?.design)?.ramps ?? []
  const names = ramps.map(({ name }) => name)
  const name = names[ramp]
  const inside = storedInside(ramps, ramp)
  return (
    <div class="row ramps">
      <button
        type="button"
        id="add-ramp"
        disabled={read === null}
        onClick={() => actions.setText(withTwin(view.text, names, ramp))}
      >
        add one like it
      </button>
      {ramps.length > 1 && (
        <button
          type="button"
          id="remove-ramp"
          disabled={read === null || inside.length > 0}
          onClick={() => {
            setRamp(0)
            actions.setText(removeRamp(view.text, ramp))
          }}
        >
          remove {name}
        </button>
      )}
      {inside.length > 0 && <span class="help">stored inside it: {inside.join(', ')}</span>}
      {read === null && <span class="help">first mend what stands under STOP: the text cannot be read</span>}
    </div>
  )
})
