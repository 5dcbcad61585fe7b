/** An address of this very machine, which nobody else can open. @example isThisComputer('http://localhost:3000/q/x') // true */
export function isThisComputer(address: string): boolean {
  const host = URL.canParse(address) ? new URL(address).hostname : ''
  return host === 'localhost' || host.endsWith('.localhost') || host === '[::1]' || host.startsWith('127.')
}
