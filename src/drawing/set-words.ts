/** Words of pages that a reprint for another printer looks for in their operators, and writes anew. */

/** On every tile; `printer`: whose correction the page carries. */
export const faceWords = (printer: string | null): string =>
  `OUTSIDE FACE up${printer === null ? '' : ` · corrected for ${printer}`}`

export const tileWords = (place: string, set: string): string => `page ${place} · ${set}`

/** The same as it stood while tiles had a row letter and a number of their own. */
export const rowTileWords = (tile: string, place: string, set: string): string =>
  `tile ${tile} · ${place} · ${set}`
