/** How far a long work is. */
export interface Progress {
  /** `what`: what is counted, `pages` where it is not said */
  readonly at: (done: number, of: number, what?: string) => void
  /** takes away what was shown */
  readonly end: () => void
}

/** Where a command's words go. */
export interface Shell {
  readonly out: (text: string) => void
  readonly err: (text: string) => void
  /** what is no text, for another program; missing where standard output is a screen */
  readonly bytes?: (content: Uint8Array) => void
  /** the answer that a person types behind a question; missing where nobody sits at a terminal */
  readonly ask?: (question: string) => Promise<string>
  /** how far a long work is; missing where no terminal shows it */
  readonly progress?: Progress
}
