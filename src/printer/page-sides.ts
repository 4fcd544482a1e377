/** Of an upright page, in the order of --margin. */
export const pageSides = ['top', 'right', 'bottom', 'left'] as const
