/** Of what begins with a layer of skin: `layer 2, piece 1 from the toe`, `layer 2: a screw`; else not a number. */
export const layerNumber = (said: string): number => Number(/^layer (\d+)/.exec(said)?.[1])
