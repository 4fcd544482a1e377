import { setFlagsFromString } from 'node:v8'

const version = process.versions.node.split('.', 1)[0]!

/** Nodes whose V8 has a quicker optimiser beside the thorough one; another would complain of its flags. */
const hasQuick = ['22', '24', '26'].includes(version)

/** Calls of a function before the thorough one takes it, where the quicker one works too and where it does not. */
const thorough = { beside: 10_000, alone: 30_000 }

/**
 * V8 optimises a function after so few runs, and draws so much of what it calls into it, that in a process as short as ours much of it
 * is thrown away again. What ends `soon`, as figures and plots of few tiles do, ends before even its quicker optimiser pays, and before
 * what it has begun to mark as in use is swept: a tenth of the demo.
 */
export const waitLonger = (soon: boolean): void => {
  if (version === '20') setFlagsFromString('--interrupt-budget=1000000')
  if (soon) setFlagsFromString('--no-incremental-marking')
  if (version === '20' || hasQuick) setFlagsFromString('--max-inlined-bytecode-size-cumulative=300')
  if (!hasQuick) return
  setFlagsFromString(`--invocation-count-for-turbofan=${soon ? thorough.alone : thorough.beside}`)
  setFlagsFromString('--invocation-count-for-maglev=4000')
  if (soon) setFlagsFromString('--no-maglev')
}

/** Tiles from which on both pay, and from which on memory counts more than time. */
const [some, many] = [12, 200]

/**
 * Before so many tiles are laid: of many V8 lets what is done with grow to four times what is in use, and the room for what is new, on
 * Node 24, to 128 MB.
 */
export const paceFor = (tiles: number): void => {
  if (tiles > some) setFlagsFromString('--incremental-marking')
  if (tiles > some && hasQuick) {
    setFlagsFromString('--maglev')
    setFlagsFromString(`--invocation-count-for-turbofan=${thorough.beside}`)
  }
  if (tiles <= many) return
  setFlagsFromString('--heap-growing-percent=30')
  setFlagsFromString('--semi-space-growth-factor=1')
}
