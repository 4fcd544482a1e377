/** A title as a file's name that every system takes. */
export const fileName = (title: string): string =>
  title
    .normalize('NFKD')
    .replaceAll(/[^\w]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 60) || 'ramp'

/** Pages of a set once more are called after its file and the pages. */
export const reprintName = (set: string, pages: readonly string[]): string =>
  `${[set.replace(/\.[^.]*$/, ''), ...pages.map((page) => page.replace(/[^\p{L}\p{N}]/gu, ''))].join('-')}.pdf`
