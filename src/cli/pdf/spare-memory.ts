import { setFlagsFromString } from 'node:v8'

/** Tiles from which on memory counts more than time. */
const many = 200

/**
 * Before so many tiles are laid: else V8 lets what is done with grow to four times what is in use, and the room for what is new, on
 * Node 24, to 128 MB.
 */
export const spareMemory = (tiles: number): void => {
  if (tiles <= many) return
  setFlagsFromString('--heap-growing-percent=30')
  setFlagsFromString('--semi-space-growth-factor=1')
}
