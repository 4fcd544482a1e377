/** What one does with full-size pages that were saved, said behind their name. */
export const printIt = (what: 'set' | 'some' | 'square', corrected: boolean): string => {
  const square = what === 'square'
  if (what === 'some') return full
  const measure = square
    ? 'Then measure it with a steel rule'
    : 'Then measure the test square, the leaf behind the map, with a steel rule'
  const off = corrected
    ? 'if it is off, save the test square under printer, and measure the printer anew by that one'
    : `if it is off, type what you read under printer${square ? '' : ' and save again'}`
  return `${full}. ${measure}; ${off}`
}

const full = ': print it at 100 %, never "fit to page"'
