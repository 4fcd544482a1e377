const most = 60

/** Letters that are no other letter with a mark. */
const plain: Readonly<Record<string, string>> = { ß: 'ss', ø: 'o', æ: 'ae', œ: 'oe', ł: 'l', đ: 'd', ı: 'i' }

/** A title as a file's name that every system takes: of a long one the first words. */
export const fileName = (title: string): string => {
  const name = title
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[ßøæœłđı]/g, (letter) => plain[letter]!)
    .replaceAll(/[^\w]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
  const end = name.length > most ? name.lastIndexOf('-', most) : name.length
  return name.slice(0, end > 0 ? end : most) || 'ramp'
}

/** Pages of a set once more are called after its file and the pages. */
export const reprintName = (set: string, pages: readonly string[]): string =>
  `${[set.replace(/\.[^.]*$/, ''), ...pages.map((page) => page.replace(/[^\p{L}\p{N}]/gu, ''))].join('-')}.pdf`
