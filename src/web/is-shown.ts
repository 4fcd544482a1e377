/** Whether it is drawn, and in no closed fold: Safari has `checkVisibility` since 17.4 only. */
export const isShown = (one: Element): boolean =>
  one.getClientRects().length > 0 && one.closest('details:not([open]) > :not(summary)') === null
