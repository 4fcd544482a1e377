import { removeRamp } from '../index.ts'
import { kept } from './kept.ts'
import type { Actions } from './state/actions.ts'
import type { View } from './state/model.ts'
import { withTwin } from './state/twin.ts'

interface RampsProps {
  readonly view: View
  readonly ramp: number
  readonly setRamp: (ramp: number) => void
  readonly actions: Actions
}

/** Another ramp, or one less. */
export const Ramps = kept(({ view, ramp, setRamp, actions }: RampsProps) => {
  const ramps = view.good?.design.ramps ?? []
  const names = ramps.map(({ name }) => name)
  const name = names[ramp]
  // the ramps that are drawn are those of the text
  const shown = view.good?.text === view.text
  const inside = ramps.filter(({ storesInside }) => name !== undefined && storesInside?.ramp === name)
  return (
    <div class="row ramps">
      <button
        type="button"
        id="add-ramp"
        disabled={!shown}
        onClick={() => actions.setText(withTwin(view.text, names, ramp))}
      >
        add one like it
      </button>
      {ramps.length > 1 && (
        <button
          type="button"
          id="remove-ramp"
          disabled={!shown || inside.length > 0}
          onClick={() => {
            setRamp(0)
            actions.setText(removeRamp(view.text, ramp))
          }}
        >
          remove {name}
        </button>
      )}
      {inside.length > 0 && (
        <span class="help">stored inside it: {inside.map((one) => one.name).join(', ')}</span>
      )}
      {view.problems.length > 0 && (
        <span class="help">first mend what stands under STOP: the text cannot be read</span>
      )}
    </div>
  )
})
