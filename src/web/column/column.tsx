import { useRef, useState } from 'preact/hooks'
import { type Problem, type Row, rampPath, rowKey, saidKind, schema, solvedRamp } from '../../index.ts'
import type { PlaceName } from '../drawing/check-places.ts'
import type { SetKey } from '../drawing/pointing.ts'
import type { View } from '../state/model.ts'
import { Field } from './field.tsx'
import { Part } from './part.tsx'
import { Steepness } from './steepness.tsx'

interface ColumnProps {
  readonly view: View
  readonly ramp: number
  readonly setKey: SetKey
  readonly mend: (problem: Problem) => void
  readonly point: (place: PlaceName | null) => void
}

/** The parts of a builder's day, each with the keys that belong to it; what none names stands in the first. */
const parts: readonly (readonly [string, readonly string[]])[] = [
  ['the ramp', []],
  ['frame', ['sides', 'studs']],
  ['skin', ['skin', 'fasten', 'run-out', 'deck-board']],
  ['pipe', ['coping', 'chamfer']],
]

const topParts: readonly (readonly [string, readonly string[]])[] = [
  ['the file', ['title', 'units', 'paper']],
  ['buy and saw', ['stock']],
]

const isLeaf = (row: Row): boolean => row.value.kind !== 'map' && row.value.kind !== 'maps'
/** A part that a ramp may have or not. */
const isOptional = (row: Row): boolean => row.value.kind === 'map' && row.words.includes('none')

/** What a closed part says: the figures that stand in it. */
const lineOf = (rows: readonly Row[], pathOf: (row: Row) => string, view: View): string =>
  rows
    .flatMap((row) => view.said.get(pathOf(row)) ?? [])
    .slice(0, 4)
    .join(', ')

/** All keys of the file, from the one schema, in groups that open. */
export const Column = ({ view, ramp, setKey, mend, point }: ColumnProps) => {
  const kind = saidKind(view.said)(ramp)
  const base = rampPath(kind)
  const own = (row: Row): string => row.path.replace(`${base}.`, '')
  const inRamp = schema.filter((row) => row.path.startsWith(`${base}.`) && (isLeaf(row) || isOptional(row)))
  const top = schema.filter((row) => row.path !== '' && !/^ramps|\[\]/.test(row.path) && isLeaf(row))
  const first = (row: Row): string => own(row).split('.')[0]!
  const named = new Set(parts.flatMap(([, keys]) => keys))
  const groups: readonly (readonly [string, readonly Row[], string])[] = [
    ...parts.map(
      ([name, keys]) =>
        [
          name,
          inRamp.filter((row) => (keys.length === 0 ? !named.has(first(row)) : keys.includes(first(row)))),
          `ramps.${ramp}.`,
        ] as const,
    ),
    ...topParts.map(
      ([name, keys]) => [name, top.filter((row) => keys.includes(row.path.split('.')[0]!)), ''] as const,
    ),
  ]
  const solved = view.good?.drawn.ramps[ramp]
  const shown = solved && solvedRamp(solved)
  // what was said once stays where it is while it is typed anew
  const [last, setLast] = useState<string | null>(null)
  const stays = useRef(new Set<string>())
  for (const path of view.said.keys()) stays.current.add(path)
  return (
    <>
      {groups
        .filter(([, rows]) => rows.length > 0)
        .map(([name, rows, before]) => {
          const pathOf = (row: Row): string => `${before}${own(row)}`
          const one = (row: Row) =>
            isOptional(row) ? (
              <Optional key={pathOf(row)} row={row} path={pathOf(row)} view={view} setKey={setKey} />
            ) : (
              <Field
                key={pathOf(row)}
                row={row}
                path={pathOf(row)}
                label={own(row).replaceAll('.', ' ') || rowKey(row)}
                view={view}
                setKey={setKey}
                mend={mend}
                point={point}
                last={last === pathOf(row)}
                enter={() => setLast(pathOf(row))}
              />
            )
          const first = rows.filter((row) => isOptional(row) || stays.current.has(pathOf(row)))
          const others = rows.filter((row) => !first.includes(row))
          return (
            <Part key={name} name={name} line={lineOf(rows, pathOf, view)} open={name === 'the ramp'}>
              {first.map(one)}
              {name === 'the ramp' && shown && view.good && (
                <Steepness ramp={shown} index={ramp} units={view.good.design.units} setKey={setKey} />
              )}
              {others.length > 0 && (
                <details class="more">
                  <summary>
                    <b>what the file does not say</b> <span>its usual holds</span>
                  </summary>
                  {others.map(one)}
                </details>
              )}
            </Part>
          )
        })}
    </>
  )
}

interface OptionalProps {
  readonly row: Row
  readonly path: string
  readonly view: View
  readonly setKey: SetKey
}

/** With or without: what comes in has the figures of the schema's own example. */
const Optional = ({ row, path, view, setKey }: OptionalProps) => {
  const units = view.said.get('units') === 'in' ? 'in' : 'mm'
  const there =
    view.said.get(path) !== 'none' &&
    [...view.said.keys()].some((key) => key === path || key.startsWith(`${path}.`))
  return (
    <label class="row optional">
      <input
        type="checkbox"
        name={path}
        checked={there}
        onChange={(event) => setKey(path, event.currentTarget.checked ? row.example[units] : 'none')}
      />
      {rowKey(row)}: {row.help}
    </label>
  )
}
