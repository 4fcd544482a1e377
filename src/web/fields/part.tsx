import type { ComponentChildren } from 'preact'

interface PartProps {
  readonly name: string
  /** what the closed part says */
  readonly line: string
  readonly open?: boolean
  /** the line belongs to what stood there before */
  readonly old?: boolean
  readonly children: ComponentChildren
}

/** A part of the builder's day that folds open; closed, it says its answer in one line. */
export const Part = ({ name, line, open = false, old = false, children }: PartProps) => (
  <details open={open} id={`part-${name.replaceAll(' ', '-')}`}>
    <summary>
      <b>{name}</b> <span class={old ? 'old' : undefined}>{line}</span>
    </summary>
    {children}
  </details>
)
