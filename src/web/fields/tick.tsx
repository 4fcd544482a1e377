import type { ComponentChildren } from 'preact'

interface TickProps {
  readonly name: string
  readonly checked: boolean
  readonly set: (checked: boolean) => void
  readonly children: ComponentChildren
}

/** A box to tick with its words beside it. */
export const Tick = ({ name, checked, set, children }: TickProps) => (
  <label class="row tick">
    <input
      type="checkbox"
      name={name}
      checked={checked}
      onChange={(event) => set(event.currentTarget.checked)}
    />
    <span>{children}</span>
  </label>
)
