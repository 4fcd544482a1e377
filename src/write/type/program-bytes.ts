import type { Face } from '../../drawing/drawing.ts'
import { fontPrograms } from './programs.ts'

/** A face of our own, packed (zlib). */
export const programBytes = (face: Face): Uint8Array =>
  Uint8Array.from(atob(fontPrograms[face].packed), (letter) => letter.charCodeAt(0))
