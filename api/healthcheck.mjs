/* Health of the container, without a shell or a tool: exits 0 when the service is ready. */
const port = process.env.PORT || '8080'
try {
  const answer = await fetch(`http://127.0.0.1:${port}/health/ready`, { signal: AbortSignal.timeout(3000) })
  process.exit(answer.ok ? 0 : 1)
} catch {
  process.exit(1)
}
