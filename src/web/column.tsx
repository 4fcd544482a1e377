import { isRamp, type Row, rampPath, rowKey, saidKind, schema } from '../index.ts'
import { Field } from './field.tsx'
import type { View } from './model.ts'

interface ColumnProps {
  readonly view: View
  readonly ramp: number
  readonly setKey: (path: string, value: string | null) => void
}

/** The parts of a builder's day, each with the keys that belong to it; what none names stands in the first. */
const parts: readonly (readonly [string, readonly string[]])[] = [
  ['the ramp', []],
  ['frame', ['sides', 'studs']],
  ['skin', ['skin', 'fasten', 'run-out', 'deck-board']],
  ['pipe', ['coping', 'chamfer']],
]

const topParts: readonly (readonly [string, readonly string[]])[] = [
  ['paper', ['title', 'units', 'paper']],
  ['buy and saw', ['stock']],
]

const isLeaf = (row: Row): boolean => row.value.kind !== 'map' && row.value.kind !== 'maps'

/** All keys of the file, from the one schema, in groups that open. */
export const Column = ({ view, ramp, setKey }: ColumnProps) => {
  const kind = saidKind(view.said)(ramp)
  const base = rampPath(kind)
  const inRamp = schema.filter((row) => row.path.startsWith(`${base}.`) && isLeaf(row))
  const top = schema.filter(
    (row) => row.path !== '' && !row.path.startsWith('ramps') && !isRamp(row) && isLeaf(row),
  )
  const first = (row: Row): string => row.path.replace(`${base}.`, '').split('.')[0]!
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
  return (
    <>
      {groups
        .filter(([, rows]) => rows.length > 0)
        .map(([name, rows, before]) => (
          <details key={name} open={name === 'the ramp'}>
            <summary>{name}</summary>
            {rows.map((row) => (
              <Field
                key={row.path}
                row={row}
                path={`${before}${row.path.replace(`${base}.`, '')}`}
                label={row.path.replace(`${base}.`, '').replaceAll('.', ' ') || rowKey(row)}
                view={view}
                setKey={setKey}
              />
            ))}
          </details>
        ))}
    </>
  )
}
