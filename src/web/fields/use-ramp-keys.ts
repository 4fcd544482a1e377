import { useMemo, useRef } from 'preact/hooks'
import { changeKind, kinds, renameRamp } from '../../index.ts'
import type { Actions } from '../state/actions.ts'

/** Actions under which a ramp that is called otherwise is called so by those that name it too, and one of another kind has the keys of that. */
export const useRampKeys = (text: string, actions: Actions): Actions => {
  const now = useRef(text)
  now.current = text
  return useMemo(() => {
    // a name half typed may be another ramp's: each is put in the text as it was before
    let before = ''
    let made: string | null = null
    const setKey = (path: string, value: string | null): void => {
      const [, ramp, key] = /^ramps\.(\d+)\.(name|kind)$/.exec(path) ?? []
      const kind = kinds.find((one) => one === value)
      if (key === 'kind' && kind !== undefined) {
        actions.setText(changeKind(now.current, Number(ramp), kind), path)
        return
      }
      if (key !== 'name' || value === null) {
        actions.setKey(path, value)
        return
      }
      if (now.current !== made) before = now.current
      made = renameRamp(before, Number(ramp), value)
      actions.setText(made, path)
    }
    return { ...actions, setKey }
  }, [actions])
}
