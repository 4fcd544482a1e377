import { editDesign, removeRamp } from '../index.ts'
import { kept } from './kept.ts'
import type { Actions } from './state/actions.ts'
import type { View } from './state/model.ts'

interface RampsProps {
  readonly view: View
  readonly ramp: number
  readonly setRamp: (ramp: number) => void
  readonly actions: Actions
}

/** Another ramp, or one less. */
export const Ramps = kept(({ view, ramp, setRamp, actions }: RampsProps) => {
  const ramps = view.good?.design.ramps ?? []
  const name = ramps[ramp]?.name
  const inside = ramps.filter(({ storesInside }) => name !== undefined && storesInside?.ramp === name)
  return (
    <div class="row ramps">
      <button type="button" id="add-ramp" onClick={() => addRamp(view, ramp, actions)}>
        add one like it
      </button>
      {ramps.length > 1 && (
        <button
          type="button"
          id="remove-ramp"
          disabled={inside.length > 0}
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
    </div>
  )
})

/** A ramp like this one at the end of the file; each needs a name then. */
const addRamp = (view: View, ramp: number, { setText }: Actions): void => {
  const names = view.good?.design.ramps.map(({ name }) => name) ?? []
  const own = names[ramp] ?? 'ramp'
  const free = [2, 3, 4, 5, 6, 7, 8, 9].map((n) => `${own} ${n}`).find((name) => !names.includes(name))
  if (free === undefined) return
  let text = view.text
  if (view.said.get(`ramps.${ramp}.name`) === undefined) text = editDesign(text, `ramps.${ramp}.name`, own)
  text = editDesign(text, `ramps.${names.length}.name`, free)
  setText(editDesign(text, `ramps.${names.length}.like`, own))
}
