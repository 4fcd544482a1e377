import { useCallback, useRef, useState } from 'preact/hooks'
import { type Problem, type Row, rowKey, takenOver } from '../../index.ts'
import type { Actions } from '../state/actions.ts'
import type { View } from '../state/model.ts'
import { labelOf, pathOfKey } from '../words/labels.ts'
import { Field } from './field.tsx'
import { Tick } from './tick.tsx'

interface KeysProps {
  readonly rows: readonly Row[]
  /** `ramps.0.` before the row's own words */
  readonly pathOf: (row: Row) => string
  readonly view: View
  /** what the ramp does not say and takes over, from the one that it is like */
  readonly taken?: ReadonlyMap<string, string>
  readonly like?: string | undefined
  /** why a key is not to be changed now; null where it may be */
  readonly fixed?: (row: Row) => string | null
  readonly actions: Actions
}

const nothing: ReadonlyMap<string, string> = new Map()

const nowhere: ReadonlySet<string> = new Set()

/** A part that is there or not. */
export const isOptional = ({ value, words, unsaid, path }: Row): boolean =>
  (value.kind === 'map' && words.includes('none')) ||
  // written over several lines: an example comes in, the rest is typed in the text
  ((value.kind === 'prices' || value.kind === 'maps') && unsaid.kind === 'open' && path !== 'ramps')

const none: readonly Problem[] = []

/** Fields of keys: those that the file says, and folded away those that it does not; one that is typed in there goes up when the fold is closed. */
export const Keys = ({ rows, pathOf, view, taken = nothing, like, fixed, actions }: KeysProps) => {
  const units = view.said.get('units') === 'in' ? 'in' : 'mm'
  const [last, setLast] = useState<string | null>(null)
  // what one types in stays where it is: moved, a field would lose the focus with its first letter
  const [entered, setEntered] = useState(nowhere)
  const enter = useCallback((path: string): void => {
    setLast(path)
    setEntered((before) => new Set([...before, path]))
  }, [])
  const stays = useRef(new Set<string>())
  for (const path of view.said.keys()) if (!entered.has(path)) stays.current.add(path)
  const wrong = new Map<string, readonly Problem[]>()
  for (const problem of view.problems) {
    const path = pathOfKey(problem.path)
    wrong.set(path, [...(wrong.get(path) ?? none), problem])
  }
  const one = (row: Row) => {
    const path = pathOf(row)
    return isOptional(row) ? (
      <Optional key={path} row={row} path={path} view={view} taken={taken} actions={actions} />
    ) : (
      <Field
        key={path}
        row={row}
        path={path}
        said={view.said.get(path) ?? ''}
        taken={taken.get(path)}
        units={units}
        fixed={fixed?.(row) ?? null}
        problems={wrong.get(path) ?? none}
        actions={actions}
        last={last === path}
        enter={enter}
      />
    )
  }
  const first = rows.filter((row) => isOptional(row) || stays.current.has(pathOf(row)))
  const others = rows.filter((row) => !first.includes(row))
  if (first.length === 0) return <>{others.map(one)}</>
  return (
    <>
      {first.map(one)}
      {others.length > 0 && (
        <details
          class="more"
          onToggle={(event) => {
            if (!event.currentTarget.open) setEntered(nowhere)
          }}
        >
          <summary>
            <b>more</b>{' '}
            <span>
              {taken.size > 0 ? `as \`${like}\` has them` : 'the file leaves these at what is usual'}
            </span>
          </summary>
          {others.map(one)}
        </details>
      )}
    </>
  )
}

interface OptionalProps {
  readonly row: Row
  readonly path: string
  readonly view: View
  readonly taken: ReadonlyMap<string, string>
  readonly actions: Actions
}

const says = (said: ReadonlyMap<string, string>, path: string): boolean =>
  said.get(path) !== 'none' && [...said.keys()].some((key) => key === path || key.startsWith(`${path}.`))

/** Whether a part is there by `like` alone, once nothing is said of it here. */
const comesBack = (said: ReadonlyMap<string, string>, path: string): boolean => {
  const others = [...said].filter(([key]) => key !== path && !key.startsWith(`${path}.`))
  return says(takenOver(new Map(others), Number(path.split('.')[1])), path)
}

/** With or without: what comes in is as the ramp that this one is like has it, else it has the figures of the schema's own example. */
const Optional = ({ row, path, view, taken, actions }: OptionalProps) => {
  const units = view.said.get('units') === 'in' ? 'in' : 'mm'
  const there = says(view.said, path) || says(taken, path)
  const out = row.words.includes('none') ? 'none' : null
  return (
    <Tick
      name={path}
      checked={there}
      set={(checked) =>
        actions.setKey(path, !checked ? out : comesBack(view.said, path) ? null : row.example[units])
      }
    >
      <b>{labelOf(path) || rowKey(row)}</b>: {row.help}
      {row.value.kind === 'map' ? '' : there ? '; they stand in the file as text' : '; comes with an example'}
    </Tick>
  )
}
