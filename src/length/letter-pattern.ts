/**
 * A pattern in which `\p{L}` stands for a letter, for a text. Of ASCII alone that is `[A-Za-z]`: V8 then builds no table of the letters
 * of all languages, which takes it longer than to read a design's lengths.
 */
export const letterPattern = (source: string, flags: string): ((text: string) => RegExp) => {
  const narrow = new RegExp(source.replaceAll(String.raw`\p{L}`, '[A-Za-z]'), flags)
  let wide: RegExp | undefined
  return (text) => {
    if (!/[^\n\r\t -~]/.test(text)) return narrow
    wide ??= new RegExp(source, flags)
    return wide
  }
}
