import { isIP } from 'node:net'
import { ok, refuse, type Result } from '../../core/result.ts'

export interface EndpointRefusal {
  code: 'endpoint_not_taken'
  message: string
}

const WORDS = {
  address: 'This is no address that a browser gives for messages.',
  https: 'The address for messages begins with https://.',
  user: 'The address for messages holds a name or a password. None is sent there.',
  port: 'The address for messages names a port of its own. Only the usual one, 443, is used.',
  name: 'The address for messages names no host on the internet.',
}

/**
 * Reads the address that a browser gave for messages. It is a stranger's address that this service will call: https alone, nothing in front of
 * the host, the usual port, and a host with a name, which is looked up and checked each time.
 *
 * Errors: `endpoint_not_taken`, in words.
 */
export function readEndpoint(text: string): Result<URL, EndpointRefusal> {
  const no = (why: keyof typeof WORDS) => refuse({ code: 'endpoint_not_taken' as const, message: WORDS[why] })
  if (!URL.canParse(text)) return no('address')
  const url = new URL(text)
  if (url.protocol !== 'https:') return no('https')
  if (url.username !== '' || url.password !== '') return no('user')
  // The usual port is left out of a parsed address.
  if (url.port !== '') return no('port')
  // Other spellings of an address, 0x7f.1 say, are plain by now.
  const host = url.hostname.replace(/\.$/, '')
  if (isIP(host) !== 0 || host.startsWith('[') || !host.includes('.') || host.endsWith('.localhost')) return no('name')
  return ok(url)
}
