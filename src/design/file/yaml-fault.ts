/** A syntax error of YAML in the words of someone who writes one file a year. Codes are those of the `yaml` package. */
export const yamlFault = (code: string, message: string): string => {
  switch (code) {
    case 'TAB_AS_INDENT':
      return 'this line is indented with a tab; use blanks'
    case 'BAD_INDENT':
      return 'this line is indented wrongly, or a bracket above is still open; keys of one map start in one column'
    case 'BLOCK_AS_IMPLICIT_KEY':
      return 'a second `:` here; put the value on its own lines, in braces, or in quotes if it is one text'
    case 'MULTILINE_IMPLICIT_KEY':
      return 'a key must stand on one line, with `: ` behind it; is a colon missing, or this line indented wrongly?'
    case 'MISSING_CHAR': {
      const quoteMark = /Missing closing (["'])/.exec(message)?.[1]
      if (quoteMark !== undefined) return `a quotation mark ${quoteMark} is never closed`
      if (/Sequence item/.test(message))
        return 'this key is indented wrongly: it belongs to no entry; keys of one map start in one column'
      return /map keys/.test(message)
        ? 'a key takes a colon and a blank behind it, as in `title: Low ramp`; is one of them missing here?'
        : 'something is missing here, perhaps a blank, a comma or a bracket'
    }
    case 'BAD_SCALAR_START':
      return 'a value must not start with this character; put it in quotes'
    case 'BAD_DQ_ESCAPE':
      return 'a backslash in double quotes has a meaning of its own; write `\\\\` or use single quotes'
    case 'UNEXPECTED_TOKEN':
      return 'this does not belong here; is a bracket, a quotation mark or a colon too many or missing?'
    case 'MULTIPLE_DOCS':
      return 'a second document starts here; one design a file'
    default:
      return `this is not readable as YAML (${message})`
  }
}
