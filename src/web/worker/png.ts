import { zlibSync } from 'fflate'
import type { RasterImage } from '../../index.ts'

/** PNG (ISO/IEC 15948), annex D: the remainders of a byte each. */
const remainders = Uint32Array.from({ length: 256 }, (_, n) => {
  let rest = n
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1
  return rest
})

const crc = (bytes: Uint8Array): number => {
  let rest = 0xffffffff
  for (const byte of bytes) rest = remainders[(rest ^ byte) & 0xff]! ^ (rest >>> 8)
  return (rest ^ 0xffffffff) >>> 0
}

const chunk = (name: string, data: Uint8Array): Uint8Array => {
  const out = new Uint8Array(data.length + 12)
  const view = new DataView(out.buffer)
  view.setUint32(0, data.length)
  out.set(new TextEncoder().encode(name), 4)
  out.set(data, 8)
  view.setUint32(data.length + 8, crc(out.subarray(4, data.length + 8)))
  return out
}

/** A grey picture as a PNG, each row as it is: the pixels are the command's, their packing is not. */
export const encodePng = ({ width, height, pixels }: RasterImage): Uint8Array => {
  const rows = new Uint8Array((width + 1) * height)
  for (let y = 0; y < height; y++) rows.set(pixels.subarray(y * width, (y + 1) * width), y * (width + 1) + 1)
  const head = new Uint8Array(13)
  const view = new DataView(head.buffer)
  view.setUint32(0, width)
  view.setUint32(4, height)
  // 8 bits, grey
  head.set([8, 0, 0, 0, 0], 8)
  const parts = [
    Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
    chunk('IHDR', head),
    chunk('IDAT', zlibSync(rows)),
    chunk('IEND', new Uint8Array(0)),
  ]
  const out = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const part of parts) {
    out.set(part, at)
    at += part.length
  }
  return out
}
