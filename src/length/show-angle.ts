import { degreesOf } from '../geometry/degrees.ts'

/** `52.3°` */
export const showDegrees = (degrees: number, decimals = 1): string => `${degrees.toFixed(decimals)}°`

/** The same of radians. */
export const showAngle = (radians: number, decimals = 1): string => showDegrees(degreesOf(radians), decimals)
