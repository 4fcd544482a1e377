import type { Check } from '../../index.ts'

/** What may throw a rider down: told before all else that is to be watched, and marked in the drawing. */
const falls: ReadonlySet<string> = new Set(['tips', 'skin-load', 'board-load'])

export const hurts = ({ id, level }: Check): boolean => level !== 'note' && falls.has(id)
