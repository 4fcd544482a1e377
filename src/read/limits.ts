/** No PDF of a set comes near it: 2,000 pages are some 8 MB. */
export const mostSetBytes = 64 * 1024 * 1024

/** Neither a page nor a plan that we write comes near it, inflated: a damaged file shall not fill the memory. */
export const mostInflated = 8 * 1024 * 1024
