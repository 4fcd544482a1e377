/** Where a command's words go. */
export interface Shell {
  readonly out: (text: string) => void
  readonly err: (text: string) => void
}
