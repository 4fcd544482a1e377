import type { View } from './model.ts'

const words = { stop: 'STOP', warn: 'watch', note: 'note' } as const

/** What is wrong, worst first; the text's own faults before all. */
export const Checks = ({ view }: { readonly view: View }) => {
  const checks = view.good?.solved.checks ?? []
  const several = (view.good?.design.ramps.length ?? 1) > 1
  return (
    <section class="checks" aria-label="checks">
      <ul aria-live="polite">
        {view.problems.map(({ place, message }) => (
          <li key={`${place.offset}${message}`} class="stop">
            <b>STOP</b> line {place.line}: {message}
          </li>
        ))}
        {view.problems.length === 0 &&
          checks.map(({ id, level, ramp, message }) => (
            <li key={`${ramp}${id}${message}`} class={level}>
              <b>{words[level]}</b> {several ? `${ramp}: ` : ''}
              {message}
            </li>
          ))}
        {view.problems.length === 0 && checks.length === 0 && <li class="note">nothing to watch</li>}
      </ul>
    </section>
  )
}
