/** mm in an inch, exactly (international inch, 1959). */
export const inch = 25.4

/** Points of a PDF page in a millimetre: 72 to the inch (ISO 32000-1, 8.3.2.3). */
export const pointsPerMm = 72 / inch
