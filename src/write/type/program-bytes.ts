import type { Face } from '../../drawing/drawing.ts'
import { fontPrograms } from './programs.ts'

/** A face of our own, packed (zlib). */
export const programBytes = (face: Face): Uint8Array => {
  const letters = atob(fontPrograms[face].packed)
  const bytes = new Uint8Array(letters.length)
  for (let i = 0; i < bytes.length; i++) bytes[i] = letters.charCodeAt(i)
  return bytes
}
