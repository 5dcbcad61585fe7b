/**
 * What is kept of a mail server's refusal: its words often repeat the address, so that only its number is, or the name of what went wrong before one.
 *
 * @example saidByServer(error) // '550', 'ETIMEDOUT'
 */
export function saidByServer(error: unknown): string {
  const { responseCode, code } = error as { responseCode?: unknown; code?: unknown }
  if (typeof responseCode === 'number') return String(responseCode)
  return typeof code === 'string' ? code : 'no answer'
}
