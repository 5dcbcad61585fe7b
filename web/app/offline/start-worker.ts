interface ScriptPolicy {
  createScriptURL(address: string): string
}
interface PolicyFactory {
  createPolicy(name: string, rules: ScriptPolicy): ScriptPolicy
}

/** The one address that may run as a worker; the content security policy lets this name in (`trusted-types … driploop-worker`). */
const WORKER = '/worker.js'
const rules: ScriptPolicy = {
  createScriptURL: (address) => {
    if (address !== WORKER) throw new TypeError('Only the worker of this application is started')
    return address
  },
}

const factory = (globalThis as { trustedTypes?: PolicyFactory }).trustedTypes
const policy = factory ? factory.createPolicy('driploop-worker', rules) : rules

/** Starts the worker that opens the application without a signal. Without https, outside this computer, a browser has none: nothing happens then. */
export async function startWorker(): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return
  await navigator.serviceWorker.register(policy.createScriptURL(WORKER))
  const { active } = await navigator.serviceWorker.ready
  const loaded = performance.getEntriesByType('resource').map(({ name }) => new URL(name))
  active?.postMessage(
    loaded.filter(({ origin }) => origin === location.origin).map(({ pathname }) => pathname),
    [],
  )
}

/** Deletes the files it keeps: none of them says anything of anyone, but a device that is passed on is left as it was found. */
export async function forgetFiles(): Promise<void> {
  if ('caches' in globalThis) for (const name of await caches.keys()) await caches.delete(name)
}
