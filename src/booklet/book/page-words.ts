/** The page on which a named thing stands; null where this booklet has none. */
export type Pages = (name: string) => number | null

const [open, close] = ['\uE000', '\uE001'] as const

/** Stands in words for the page of a named thing, which is known once all pages are filled: ` (page 6)` behind what is said of it, or nothing at all. */
export const onPage = (name: string, said = ''): string => `${open}${name}|${said}${close}`

/** Words with the pages that they name. */
export const withPages = (words: string, pages: Pages): string =>
  words.replace(/\uE000([^|]*)\|([^\uE001]*)\uE001/g, (_, name: string, said: string) => {
    const page = pages(name)
    return page === null ? '' : `${said} (page ${page})`
  })

/** For measuring: as wide as any page's number. */
export const someWidePage: Pages = () => 88
