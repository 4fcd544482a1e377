import { setFlagsFromString } from 'node:v8'

const version = process.versions.node.split('.', 1)[0]!

/** Nodes whose V8 has a quicker optimiser beside the thorough one; another would complain of its flags. */
const hasQuick = ['22', '24', '26'].includes(version)

/**
 * V8 optimises a function after so few runs that in a process as short as ours much of it is thrown away again. What ends `soon`, as
 * figures and plots of few tiles do, ends before even its quicker optimiser pays, and before what it has begun to mark as in use is
 * swept: a twentieth of the demo.
 */
export const waitLonger = (soon: boolean): void => {
  if (version === '20') setFlagsFromString('--interrupt-budget=1000000')
  if (soon) setFlagsFromString('--no-incremental-marking')
  if (!hasQuick) return
  setFlagsFromString('--invocation-count-for-turbofan=10000')
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
  if (tiles > some && hasQuick) setFlagsFromString('--maglev')
  if (tiles <= many) return
  setFlagsFromString('--heap-growing-percent=30')
  setFlagsFromString('--semi-space-growth-factor=1')
}
