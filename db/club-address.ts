/**
 * One spelling of the address of another club's feed: without a fragment, an empty query, dots at the end of a host and the usual port, its host in
 * small letters. Two spellings of one address would else be two clubs, each with a say of its own.
 *
 * @example clubAddress('https://Reef.example.:443/open-prices#top') // 'https://reef.example/open-prices'
 */
export function clubAddress(address: string): string {
  const url = new URL(address)
  url.hash = ''
  url.hostname = url.hostname.replace(/\.+$/, '')
  if (url.search === '') url.search = ''
  return url.href
}
