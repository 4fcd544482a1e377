import type { Units } from '../length.ts'

/** What the signs behind figures in inches mean, by an example. */
const signs = '1/2+ is 17/32, 1/2– is 15/32'

/** Of the foot of a page. */
export const lengthsShort = (units: Units): string => (units === 'mm' ? 'mm' : `in; ${signs}`)

/** As a sentence. */
export const lengthsNote = (units: Units): string =>
  units === 'mm'
    ? 'Lengths in mm.'
    : `Lengths in inches; + is 1/32 more and – is 1/32 less than the figure before it: ${signs}.`
