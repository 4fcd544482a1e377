type Section = readonly [number, number]

/** The sides of a timber's section, the thin one first, whichever was typed first. mm */
export const thinWide = (section: Section): Section => [Math.min(...section), Math.max(...section)]

/** How thick a timber of that section is, mm. */
export const thinSide = (section: Section): number => Math.min(...section)
