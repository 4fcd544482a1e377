/** One key of the design file and what to type there: `height.deck` of a ramp, `stock.panel` of the file. */
export interface Setting {
  /** whose key it is: the ramp's that is spoken of, another one's, the file's */
  readonly of: 'own' | 'file' | { readonly ramp: string }
  readonly key: string
  readonly value: string
}

/** One way out: all that is typed for it, together. */
export type Offer = readonly Setting[]

/** Words, and what they offer to type. */
export interface Told {
  readonly words: string
  readonly offers: readonly Offer[]
}

export type Said = string | Told

export const isTold = (said: unknown): said is Told =>
  typeof said === 'object' && said !== null && 'words' in said && 'offers' in said

/** Pieces of a sentence, one after the other; what they offer stays with it. */
export const tell = (...pieces: readonly Said[]): Told => ({
  words: pieces.map((piece) => (isTold(piece) ? piece.words : piece)).join(''),
  offers: pieces.flatMap((piece) => (isTold(piece) ? piece.offers : [])),
})

/** A text with what it offers in its gaps: `` told`make it ${longer} or more` ``. */
export const told = (texts: TemplateStringsArray, ...gaps: readonly (Said | number)[]): Told =>
  tell(
    ...texts.flatMap((text, i): readonly Said[] => {
      const gap = gaps[i]
      return gap === undefined ? [text] : [text, typeof gap === 'number' ? `${gap}` : gap]
    }),
  )

/** Words that offer to type these keys together. */
export const offering = (words: string, ...settings: Offer): Told => ({ words, offers: [settings] })

/** What is told, each way with more that is typed with it. */
export const typedWith = ({ words, offers }: Told, ...more: Offer): Told => ({
  words,
  offers: offers.map((offer) => [...offer, ...more]),
})

/** Words alone. */
export const unoffered = (said: Said): string => (isTold(said) ? said.words : said)

/** A key of the ramp that is spoken of. */
export const set = (key: string, value: string): Setting => ({ of: 'own', key, value })

/** A key of the file. */
export const setOfFile = (key: string, value: string): Setting => ({ of: 'file', key, value })
