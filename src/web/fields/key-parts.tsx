import type { ComponentChildren } from 'preact'
import { useMemo } from 'preact/hooks'
import { type Row, rampPath, rowKey, saidKind, schema, solvedRamp, takenOver } from '../../index.ts'
import { kept } from '../kept.ts'
import type { Actions } from '../state/actions.ts'
import type { View } from '../state/model.ts'
import { storedInside } from '../words/stored-inside.ts'
import { isOptional, Keys } from './keys.tsx'
import { Part } from './part.tsx'
import { fileLines, rampLines } from './part-lines.ts'
import { Steepness } from './steepness.tsx'
import { useRampKeys } from './use-ramp-keys.ts'

/** The parts of a ramp, each with the keys that belong to it; what none names stands in the first. */
const rampParts: readonly (readonly [string, readonly string[]])[] = [
  ['the ramp', []],
  ['frame', ['sides', 'studs']],
  ['skin', ['skin', 'fasten', 'run-out', 'deck-board']],
  ['pipe', ['coping', 'chamfer']],
]

const isField = (row: Row): boolean =>
  isOptional(row) || (row.value.kind !== 'map' && row.value.kind !== 'maps' && row.value.kind !== 'prices')

interface RampPartsProps {
  readonly view: View
  readonly ramp: number
  readonly actions: Actions
}

/** All keys of a ramp, from the one schema, in groups that open. */
export const RampParts = kept(({ view, ramp, actions }: RampPartsProps) => {
  const base = rampPath(saidKind(view.said)(ramp))
  const own = (row: Row): string => row.path.slice(base.length + 1)
  const groups = useMemo(() => {
    const rows = schema.filter((row) => row.path.startsWith(`${base}.`) && isField(row))
    const first = (row: Row): string => own(row).split('.')[0]!
    const named = new Set(rampParts.flatMap(([, keys]) => keys))
    return rampParts.map(
      ([name, keys]) =>
        [
          name,
          rows.filter((row) => (keys.length === 0 ? !named.has(first(row)) : keys.includes(first(row)))),
        ] as const,
    )
  }, [base])
  const taken = useMemo(() => takenOver(view.said, ramp), [view.said, ramp])
  const rampActions = useRampKeys(view.text, actions)
  const inside = storedInside((view.read ?? view.good?.design)?.ramps ?? [], ramp)
  const fixed = inside.length > 0 ? `stays as it is: stored inside it: ${inside.join(', ')}` : null
  const { good } = view
  const design = good?.design.ramps[ramp]
  const lines = useMemo(() => design && good && rampLines(design, good.design.units), [design])
  const solved = good?.drawn.ramps[ramp]
  const shown = solved && solvedRamp(solved)
  return (
    <>
      {groups
        .filter(([, rows]) => rows.length > 0)
        .map(([name, rows]) => (
          <Part key={name} name={name} line={lines?.[name] ?? ''} open={name === 'the ramp'}>
            <Keys
              rows={rows}
              pathOf={(row) => `ramps.${ramp}.${own(row)}`}
              view={view}
              taken={taken}
              like={view.said.get(`ramps.${ramp}.like`)}
              fixed={(row) => (rowKey(row) === 'kind' ? fixed : null)}
              actions={rampActions}
            />
            {name === 'the ramp' && shown && good && (
              <Steepness ramp={shown} index={ramp} units={good.design.units} setKey={actions.setKey} />
            )}
          </Part>
        ))}
    </>
  )
})

const fileRows = schema.filter((row) => row.path !== '' && !/^ramps|\[\]/.test(row.path) && isField(row))

/** Whether a path of the file has a field, which tells what is wrong with it. */
export const hasField = (path: string, view: View, ramp: number): boolean => {
  const own = /^ramps\.(\d+)\.(.+)$/.exec(path)
  const row = own ? `${rampPath(saidKind(view.said)(ramp))}.${own[2]}` : path
  return (
    (own === null || Number(own[1]) === ramp) &&
    schema.some((one) => one.path === row && isField(one) && !isOptional(one))
  )
}

interface FileKeysProps {
  /** first words of their paths */
  readonly keys: readonly string[]
  readonly view: View
  readonly actions: Actions
}

/** Keys of the whole file. */
export const FileKeys = kept(({ keys, view, actions }: FileKeysProps) => {
  const rows = useMemo(() => fileRows.filter((row) => keys.includes(row.path.split('.')[0]!)), [keys])
  return <Keys rows={rows} pathOf={(row) => row.path} view={view} actions={actions} />
})

/** A part that is keys of the file. */
export const FilePart = ({ name, ...keys }: FileKeysProps & { readonly name: string }): ComponentChildren => {
  const design = keys.view.good?.design
  const line = useMemo(() => (design ? fileLines(design)[name] : '') ?? '', [design, name])
  return (
    <Part name={name} line={line}>
      <FileKeys {...keys} />
    </Part>
  )
}
