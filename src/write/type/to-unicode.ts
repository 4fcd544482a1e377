const hex = (value: number, digits: number): string => value.toString(16).padStart(digits, '0')

/** The letters of codes as readers copy and search them (ISO 32000-1, 9.10.3); `bytes`: of a code. */
export const toUnicode = (
  letters: readonly (readonly [code: number, text: string])[],
  bytes: 1 | 2,
): string => {
  const digits = 2 * bytes
  const lines = letters.map(
    ([code, text]) =>
      `<${hex(code, digits)}> <${Array.from({ length: text.length }, (_, i) => hex(text.charCodeAt(i), 4)).join('')}>`,
  )
  // no more than 100 lines together
  const blocks = Array.from({ length: Math.ceil(lines.length / 100) }, (_, i) =>
    lines.slice(100 * i, 100 * (i + 1)),
  )
  return [
    '/CIDInit /ProcSet findresource begin',
    '12 dict begin',
    'begincmap',
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
    '/CMapName /Adobe-Identity-UCS def',
    '/CMapType 2 def',
    '1 begincodespacerange',
    `<${'0'.repeat(digits)}> <${'f'.repeat(digits)}>`,
    'endcodespacerange',
    ...blocks.flatMap((block) => [`${block.length} beginbfchar`, ...block, 'endbfchar']),
    'endcmap',
    'CMapName currentdict /CMap defineresource pop',
    'end',
    'end',
    '',
  ].join('\n')
}
