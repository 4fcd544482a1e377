/** What a command says, for one who types in a form: options are fields there, without dashes. What was typed keeps its own. */
export const formWords = (said: string): string => said.replace(/(^|[\s(])--(?=[a-z])/g, '$1')

/** All that is wrong with what was typed, a line each. */
export const faultWords = (faults: readonly string[]): string => faults.map(formWords).join('\n')
