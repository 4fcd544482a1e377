import { setFlagsFromString } from 'node:v8'

const version = process.versions.node.split('.', 1)[0]!

/** Nodes whose V8 has a quicker optimiser beside the thorough one; another would complain of its flags. */
const hasQuick = ['22', '24', '26'].includes(version)

const set = (...flags: readonly string[]): void => {
  for (const flag of flags) setFlagsFromString(`--${flag}`)
}

/** How much of what it calls is drawn into a function that is optimised: a third of what V8 would take. */
const inlined = 'max-inlined-bytecode-size-cumulative=300'

/** Calls before the thorough optimiser takes a function: more of them where the quicker one is not asked first. */
const thoroughAfter = (calls: number): string => `invocation-count-for-turbofan=${calls}`

/**
 * V8 optimises a function after so few runs, and draws so much of what it calls into it, that in a process as short as ours much of it
 * is thrown away again. What ends `soon`, as figures and plots of few tiles do, ends before even its quicker optimiser pays, and before
 * what it has begun to mark as in use is swept: a tenth of the demo.
 */
export const waitLonger = (soon: boolean): void => {
  if (soon) set('no-incremental-marking')
  if (version === '20') set('interrupt-budget=1000000', inlined)
  if (!hasQuick) return
  set(inlined, thoroughAfter(soon ? 30_000 : 10_000), 'invocation-count-for-maglev=4000')
  if (soon) set('no-maglev')
}

/** Tiles from which on both pay, and from which on memory counts more than time. */
const [some, many] = [12, 200]

/**
 * Before so many tiles are laid: the quicker optimiser takes a function sooner, and of many the thorough one. Of many V8 lets what is
 * done with grow to four times what is in use, and the room for what is new, on Node 24, to 128 MB.
 */
export const paceFor = (tiles: number): void => {
  if (tiles > some) set('incremental-marking')
  if (tiles > some && hasQuick)
    set('maglev', tiles > many ? thoroughAfter(10_000) : 'invocation-count-for-maglev=1000')
  if (tiles > many) set('heap-growing-percent=30', 'semi-space-growth-factor=1')
}
