/**
 * The value of Content-Disposition for a file that is to be kept under a name. One with letters beyond ASCII is said twice: as its browser reads
 * it, and with a dash in their place for whatever does not.
 *
 * Source: RFC 6266, section 4.3 and appendix D; RFC 8187, section 3.2.
 *
 * @example attachment('märz.csv') // `attachment; filename="m-rz.csv"; filename*=UTF-8''m%C3%A4rz.csv`
 */
export function attachment(fileName: string): string {
  const plain = fileName.replace(/[^\x20-\x7E]|["\\%]/g, '-')
  if (plain === fileName) return `attachment; filename="${plain}"`
  const whole = encodeURIComponent(fileName).replace(/['()*]/g, (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`)
  return `attachment; filename="${plain}"; filename*=UTF-8''${whole}`
}
