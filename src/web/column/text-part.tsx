interface TextPartProps {
  readonly text: string
  readonly setText: (text: string, of: string | null) => void
}

/** letters; no design is longer */
const mostShown = 300_000

/** The design file itself. */
export const TextPart = ({ text, setText }: TextPartProps) => (
  <textarea
    name="text"
    aria-label="the design file"
    rows={16}
    spellcheck={false}
    autocomplete="off"
    // what is no design is not worth the wait
    value={text.length > mostShown ? '' : text}
    onInput={(event) => setText(event.currentTarget.value, 'text')}
  />
)
