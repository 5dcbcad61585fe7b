/** Hands bytes to the browser to keep as a file, as a download does. */
export function saveFile(bytes: Blob, name: string): void {
  const address = URL.createObjectURL(bytes)
  const link = document.createElement('a')
  link.href = address
  link.download = name
  document.body.append(link)
  link.click()
  link.remove()
  // The browser has begun to read by then; a minute is more than it needs to.
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}
