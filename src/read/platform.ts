/** What the platform hands in. */
export interface ReadPlatform {
  /** undoes a zlib stream (RFC 1950); throws on one that is torn or altered */
  readonly inflate: (bytes: Uint8Array) => Uint8Array
  /** the fingerprint that seals plans */
  readonly fingerprint: (text: string) => string
}
