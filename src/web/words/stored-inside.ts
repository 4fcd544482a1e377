import type { Design } from '../../index.ts'

/** Names of the ramps that are stored inside one: it stays, and stays of its kind. */
export const storedInside = (ramps: Design['ramps'], ramp: number): readonly string[] => {
  const name = ramps[ramp]?.name
  return ramps
    .filter(({ storesInside }) => name !== undefined && storesInside?.ramp === name)
    .map((one) => one.name)
}
