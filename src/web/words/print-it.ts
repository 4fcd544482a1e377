/** What one does with a set that was saved. */
export const printIt =
  ': print it at 100 %, never "fit to page". Then measure the test square, the leaf behind the map, with a steel rule; if it is off, type what you read under printer and save again'
