/** What the saw takes, mm. */
export interface Saw {
  readonly kerf: number
  /** what is not used along each edge of a panel */
  readonly trim: number
  /** pieces lie on whole steps of the tape where there is room */
  readonly step: number
}
