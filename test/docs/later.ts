/**
 * What the program has, and the docs do not tell yet: the docs of each come with its own issue. Take a name off this list once it
 * is documented: a test asks for that.
 */
export const later: Readonly<Record<'commands' | 'options' | 'checks', readonly string[]>> = {
  commands: [],
  /** command and option */
  options: [],
  checks: [],
}
