import { Composer, CST, type Document, isMap, isScalar, isSeq, Lexer, LineCounter, Parser, visit } from 'yaml'
import { harmless, quote } from '../../length/quote.ts'
import type { Place } from '../problem.ts'
import type { Report } from '../report.ts'
import { colonSlip } from './colon-slip.ts'
import { oddBlank, oddBlankIn } from './odd-blank.ts'
import type { Tree, TreeScalar } from './tree.ts'
import { yamlFault } from './yaml-fault.ts'

const mostLetters = 256 * 1024
/** lists and maps inside each other */
const mostDepth = 32
/** words, signs, blanks and line ends; twenty ramps with every key and a comment on each take about 9,000 */
const mostTokens = 30_000

/** Faults that a forgotten colon, or the blank behind it, may come out as. */
const fromSlip: ReadonlySet<string> = new Set([
  'MISSING_CHAR',
  'MULTILINE_IMPLICIT_KEY',
  'UNEXPECTED_TOKEN',
  'BAD_INDENT',
])

const wholeFile: Place = { line: 1, column: 1, offset: 0, end: 0 }

/** A text as it is read: where its letters stand, and what is wrong there. */
interface Source {
  readonly text: string
  readonly lines: LineCounter
  readonly placeOf: (offset: number, end: number) => Place
  readonly fail: (code: string, place: Place, message: string) => undefined
}

/** A text whose lines all end with a carriage return alone, as old programs write them: YAML knows no such end. */
export const withLineFeeds = (text: string): string =>
  text.includes('\n') ? text : text.replaceAll('\r', '\n')

/**
 * The text as a tree, or undefined with at least one problem reported. Size and depth are bounded before anything recursive
 * looks at the text; aliases are refused, so nothing can grow.
 */
export const parseDesign = (text: string, report: Report): Tree | undefined => {
  const source = sourceOf(withLineFeeds(text), report)
  if (text.length > mostLetters)
    return source.fail(
      'too-big',
      wholeFile,
      `the file has ${text.length} letters; a design has at most ${mostLetters} (256 kB): is it the right file?`,
    )
  if (text.includes('\0'))
    return source.fail('not-text', wholeFile, 'this is not a text file; a design is plain YAML text')
  const tokens = tokensOf(source)
  const document = tokens && documentOf(source, tokens)
  if (!document || hasAliases(source, document)) return undefined
  const tree = treeOf(source, document.contents, wholeFile)
  const blank = oddBlankIn(source.text, tree)
  return blank ? source.fail('yaml', source.placeOf(blank.from, blank.to), blank.message) : tree
}

const sourceOf = (text: string, report: Report): Source => {
  const lines = new LineCounter()
  lines.addNewLine(0)
  return {
    text,
    lines,
    placeOf: (offset, end) => {
      // the library points behind the end where something is missing there
      const start = Math.min(offset, text.length)
      const { line, col } = lines.linePos(start)
      return { line, column: col, offset: start, end: Math.max(start, Math.min(end, text.length)) }
    },
    fail: (code, place, message) => report(code, '', place, message) as undefined,
  }
}

const tokensOf = ({ text, lines, placeOf, fail }: Source): readonly CST.Token[] | undefined => {
  const parser = new Parser(lines.addNewLine)
  const tokens: CST.Token[] = []
  let count = 0
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) tokens.push(token)
    count++
    if (count > mostTokens)
      return fail(
        'too-big',
        wholeFile,
        `the file has more than ${mostTokens} words and signs; a design has a few hundred: is it the right file?`,
      )
    // on the parser's stack lie the document, the open lists and maps, and the value at hand
    if (parser.stack.length > mostDepth && parser.stack.filter(CST.isCollection).length > mostDepth)
      return fail(
        'too-deep',
        placeOf(parser.offset - 1, parser.offset),
        `lists and maps lie more than ${mostDepth} deep in each other here; a design needs 5`,
      )
  }
  for (const token of parser.end()) tokens.push(token)
  return tokens
}

/** The only document of the text, which holds something. */
const documentOf = (
  { text, placeOf, fail }: Source,
  tokens: readonly CST.Token[],
): Document.Parsed | undefined => {
  // failsafe: every scalar stays the text that was typed. Twice the same key is looked for later: here it costs n²
  const options = { schema: 'failsafe', uniqueKeys: false, logLevel: 'silent' } as const
  const documents = [...new Composer(options).compose(tokens, true, text.length)]
  const document = documents[0]
  const fault = documents.flatMap((d) => d.errors)[0]
  // only the first: behind a slip of the syntax the rest of the text is read askew
  if (fault !== undefined) {
    const slip =
      oddBlank(text, fault.pos[0]) ?? (fromSlip.has(fault.code) ? colonSlip(text, fault.pos[0]) : null)
    return slip
      ? fail('yaml', placeOf(slip.from, slip.to), slip.message)
      : fail('yaml', placeOf(...fault.pos), yamlFault(fault.code, harmless(fault.message)))
  }
  const second = documents[1]
  if (second !== undefined)
    return fail('yaml', placeOf(second.range[0], second.range[0]), yamlFault('MULTIPLE_DOCS', ''))

  const contents = document?.contents
  if (contents == null || (isScalar(contents) && String(contents.value) === ''))
    return fail('empty', wholeFile, 'the file is empty')
  return document
}

/** Whether parts of the text repeat others; the first few are reported. */
const hasAliases = ({ placeOf, fail }: Source, document: Document.Parsed): boolean => {
  let aliases = 0
  visit(document, {
    Alias: (_, alias) => {
      const [start, end] = alias.range!
      fail(
        'alias',
        placeOf(start, end),
        `${quote(`*${alias.source}`)} repeats another part of the file, which a design may not; write the value out, or use \`like:\` to take over a ramp`,
      )
      aliases++
      return aliases < 3 ? undefined : visit.BREAK
    },
  })
  return aliases > 0
}

/** `fallback`: the place of what the library gives none. */
const treeOf = (source: Source, node: unknown, fallback: Place): Tree => {
  const { text, placeOf } = source
  const range = (isScalar(node) || isSeq(node) || isMap(node)) && node.range
  const place = range ? placeOf(range[0], range[1]) : fallback
  if (isSeq(node))
    return { kind: 'list', items: node.items.map((item) => treeOf(source, item, place)), place }
  if (!isMap(node)) {
    const empty = place.end === place.offset
    const comment = empty ? /^[ \t]*(#[^\s#][^\r\n]*)/.exec(text.slice(place.end))?.[1] : undefined
    const value = isScalar(node) ? String(node.value) : ''
    return { kind: 'scalar', text: value, place, ...(comment !== undefined && { comment: comment.trim() }) }
  }
  const pairs = node.items.map((pair) => {
    const key = treeOf(source, pair.key, place)
    const name: TreeScalar =
      key.kind === 'scalar'
        ? key
        : { ...key, kind: 'scalar', text: text.slice(key.place.offset, key.place.end) }
    return { key: name, value: treeOf(source, pair.value, name.place) }
  })
  return { kind: 'map', pairs, place }
}
