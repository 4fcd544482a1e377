/** A font of one-byte codes, ready to be put into a file. Units of its letters: 1000 an em. */
export interface FontProgram {
  readonly box: readonly [number, number, number, number]
  readonly ascent: number
  readonly descent: number
  /** bytes before they were packed */
  readonly length: number
  /** TrueType, as a zlib stream (RFC 1950), base64 */
  readonly packed: string
}
