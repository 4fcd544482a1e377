/** Where a command's words go. */
export interface Shell {
  readonly out: (text: string) => void
  readonly err: (text: string) => void
  /** the answer that a person types behind a question; missing where nobody sits at a terminal */
  readonly ask?: (question: string) => Promise<string>
}
