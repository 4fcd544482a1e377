/**
 * In place of what pdf-lib brings and nobody here asks for: its fonts, all of whose letters are unpacked as they are loaded, since pages
 * carry ours, and what packs streams, since the platform does.
 */
export const Encodings = {}
export const Font = {}
export const FontNames = {}
export default {}
