import type { Row } from '../index.ts'
import type { View } from './model.ts'

interface FieldProps {
  readonly row: Row
  /** `ramps.0.height.deck` */
  readonly path: string
  readonly label: string
  readonly view: View
  readonly setKey: (path: string, value: string | null) => void
}

/** One key of the file as a field; emptied, the key goes and its default holds. */
export const Field = ({ row, path, label, view, setKey }: FieldProps) => {
  const units = view.said.get('units') === 'in' ? 'in' : 'mm'
  const problems = view.problems.filter((problem) => problem.path.replaceAll(/\[(\d+)\]/g, '.$1') === path)
  const said = view.said.get(path) ?? ''
  const standing = row.unsaid.kind === 'default' ? String(row.unsaid.text[units]) : ''
  const id = `field-${path}`
  const common = {
    id,
    name: path,
    'aria-describedby': `${id}-help`,
    ...(problems.length > 0 && { 'aria-invalid': true }),
  }
  return (
    <div class="field">
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
          value={said}
          placeholder={standing}
          autocomplete="off"
          spellcheck={false}
          onInput={(event) =>
            setKey(path, event.currentTarget.value.trim() === '' ? null : event.currentTarget.value)
          }
        />
      )}
      <p id={`${id}-help`} class={problems.length > 0 ? 'wrong' : 'help'}>
        {problems.length > 0 ? problems.map(({ message }) => message).join('; ') : row.help}
      </p>
    </div>
  )
}
