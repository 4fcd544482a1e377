import { useState } from 'preact/hooks'
import type { Problem, Row } from '../../index.ts'
import { type PlaceName, placeOfKey } from '../drawing/check-places.ts'
import type { SetKey } from '../drawing/pointing.ts'
import type { View } from '../state/model.ts'
import { Meant } from './checks.tsx'

interface FieldProps {
  readonly row: Row
  /** `ramps.0.height.deck` */
  readonly path: string
  readonly label: string
  readonly view: View
  readonly setKey: SetKey
  readonly mend: (problem: Problem) => void
  readonly point: (place: PlaceName | null) => void
  /** whether this is the one that was typed in last */
  readonly last: boolean
  readonly enter: () => void
}

/** One key of the file as a field; emptied, the key goes and its default holds. */
export const Field = ({ row, path, label, view, setKey, mend, point, last, enter }: FieldProps) => {
  const units = view.said.get('units') === 'in' ? 'in' : 'mm'
  const problems = view.problems.filter((problem) => problem.path.replaceAll(/\[(\d+)\]/g, '.$1') === path)
  const said = view.said.get(path) ?? ''
  const standing = row.unsaid.kind === 'default' ? String(row.unsaid.text[units]) : ''
  const [emptied, setEmptied] = useState(false)
  const id = `field-${path}`
  const common = {
    id,
    name: path,
    'aria-describedby': `${id}-help`,
    onFocus: () => {
      enter()
      point(placeOfKey(path))
    },
    onBlur: () => {
      point(null)
      // not while it is typed over: its comment would go, and its place in the file
      if (emptied) setKey(path, null)
      setEmptied(false)
    },
    ...(problems.length > 0 && { 'aria-invalid': true }),
  }
  return (
    <div class={last || problems.length > 0 ? 'field' : 'field quiet'}>
      <label for={id}>{label}</label>
      {row.value.kind === 'choice' ? (
        <select
          {...common}
          value={said}
          onChange={(event) =>
            setKey(path, event.currentTarget.value === '' ? null : event.currentTarget.value)
          }
        >
          <option value="">{standing}</option>
          {row.value.of.map((word) => (
            <option key={word} value={word}>
              {word}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...common}
          value={emptied ? '' : said}
          placeholder={standing}
          autocomplete="off"
          spellcheck={false}
          onInput={(event) => {
            const typed = event.currentTarget.value
            setEmptied(typed.trim() === '')
            if (typed.trim() !== '') setKey(path, typed)
          }}
        />
      )}
      <p id={`${id}-help`} class={problems.length > 0 ? 'wrong' : 'help'}>
        {problems.length > 0 ? problems.map(({ message }) => message).join('; ') : row.help}
        {problems.map((problem) => (
          <Meant key={problem.message} problem={problem} mend={mend} />
        ))}
      </p>
    </div>
  )
}
