/**
 * What the program has, and the docs do not tell yet: the docs of each come with its own issue. Take a name off this list once it
 * is documented: a test asks for that.
 */
export const later = {
  commands: ['square', 'gauge', 'reprint', 'offsets'],
  /** command and option */
  options: ['plot --map', 'plot --strips'],
  checks: ['skin-bend'],
} as const satisfies Record<string, readonly string[]>
