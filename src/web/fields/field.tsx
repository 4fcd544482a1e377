import { useEffect, useRef, useState } from 'preact/hooks'
import { type Problem, type Row, rowKey, rowTitle } from '../../index.ts'
import { kept } from '../kept.ts'
import type { Actions } from '../state/actions.ts'
import { placeOfKey } from '../words/check-places.ts'
import { labelOf } from '../words/labels.ts'
import { isList, listShown, listTyped } from '../words/list.ts'
import { Meant } from './meant.tsx'

interface FieldProps {
  readonly row: Row
  /** `ramps.0.height.deck` */
  readonly path: string
  /** as it is typed in the file; empty where it is not */
  readonly said: string
  /** as it is typed in the ramp that this one is like */
  readonly taken: string | undefined
  readonly units: 'mm' | 'in'
  /** why one's choice is barred; null where it is not */
  readonly fixed: string | null
  readonly problems: readonly Problem[]
  readonly actions: Actions
  /** whether this is the one that was typed in last */
  readonly last: boolean
  readonly enter: (path: string) => void
}

/** Letters that a field of half a column, and of half a phone, has room for. */
const rooms = { column: 22, phone: 11 } as const

/** Figures that say no unit are in the file's own. */
const bare = /^[\d\s./]+$/

/** One key of the file as a field; emptied, the key goes and its default holds. */
export const Field = kept(
  ({ row, path, said: inFile, taken, units, fixed, problems, actions, last, enter }: FieldProps) => {
    const { setKey, mend, pointField } = actions
    const list = isList(row)
    const said = list ? listShown(inFile) : inFile
    const usual = row.unsaid.kind === 'default' ? [row.unsaid.text[units]].flat().join(', ') : ''
    const standing = taken === undefined ? usual : list ? listShown(taken) : taken
    const [emptied, setEmptied] = useState(false)
    const id = `field-${path}`
    // what is typed and what is wrong with it are seen together
    const whole = useRef<HTMLDivElement>(null)
    const wrong = problems.length > 0
    useEffect(() => {
      if (wrong && whole.current!.contains(document.activeElement))
        whole.current!.scrollIntoView({ block: 'nearest' })
    }, [wrong])
    const common = {
      id,
      name: path,
      'aria-describedby': `${id}-help`,
      onFocus: () => {
        enter(path)
        pointField(placeOfKey(path))
      },
      onBlur: () => {
        pointField(null)
        // not while it is typed over: its comment would go, and its place in the file
        if (emptied) setKey(path, null)
        setEmptied(false)
      },
      ...(problems.length > 0 && { 'aria-invalid': true }),
    }
    const shown = said === '' ? standing : said
    const inUnits = row.value.kind === 'length' && bare.test(shown)
    const room =
      shown.length > rooms.column
        ? ' long'
        : shown.length + (inUnits ? 3 : 0) > rooms.phone
          ? ' middling'
          : ''
    return (
      <div ref={whole} class={`field${last || problems.length > 0 ? '' : ' quiet'}${room}`}>
        <label for={id}>{labelOf(path)}</label>
        {row.value.kind === 'choice' ? (
          <select
            {...common}
            value={said}
            disabled={fixed !== null}
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
          <span class="entry">
            <input
              {...common}
              value={emptied ? '' : said}
              placeholder={standing}
              autocomplete="off"
              spellcheck={false}
              onInput={(event) => {
                const typed = event.currentTarget.value
                setEmptied(typed.trim() === '')
                if (typed.trim() !== '') setKey(path, list ? listTyped(typed, rowKey(row)) : typed)
              }}
            />
            {inUnits && <span class="unit">{units}</span>}
          </span>
        )}
        <p id={`${id}-help`} class={problems.length > 0 ? 'wrong' : 'help'}>
          {problems.length > 0
            ? problems.map(({ message }) => message).join('; ')
            : (fixed ?? `${row.help}; in the file: ${rowTitle(row).replaceAll('.', ', ')}`)}
          {problems.map((problem) => (
            <Meant key={problem.message} problem={problem} mend={mend} />
          ))}
        </p>
      </div>
    )
  },
)
