/** Of a piece of skin by its words: `layer 2, piece 1 from the toe`. */
export const layerNumber = (said: string): number => Number(/^layer (\d+)/.exec(said)?.[1])
