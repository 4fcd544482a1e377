import type { View } from './model.ts'

interface ChecksProps {
  readonly view: View
  readonly setKey: (path: string, value: string | null) => void
}

const words = { stop: 'STOP', warn: 'watch', note: 'note' } as const

/** What is wrong, worst first; the text's own faults before all. */
export const Checks = ({ view }: ChecksProps) => {
  const checks = view.good?.solved.checks ?? []
  return (
    <section class="checks" aria-label="checks" aria-live="polite">
      <ul>
        {view.problems.map(({ place, message }) => (
          <li key={`${place.offset}${message}`} class="stop">
            <b>STOP</b> line {place.line}: {message}
          </li>
        ))}
        {view.problems.length === 0 &&
          checks.map(({ id, level, ramp, message }) => (
            <li key={`${ramp}${id}${message}`} class={level}>
              <b>{words[level]}</b> {message}
            </li>
          ))}
        {view.problems.length === 0 && checks.length === 0 && <li class="note">nothing to watch</li>}
      </ul>
    </section>
  )
}
