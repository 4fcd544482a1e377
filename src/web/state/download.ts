/** Hands a file to the browser, which saves it as it always does. */
export const download = (name: string, type: string, content: Uint8Array | string): void => {
  const url = URL.createObjectURL(new Blob([content as BlobPart], { type }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  // some browsers read it only after the click has ended
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}
