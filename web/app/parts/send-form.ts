/**
 * Sends a form as a page of its own would. Answered with an attachment, it leaves the screen as it is, and the browser writes the answer to the disk
 * as it comes, however large: nothing of it is held here.
 */
export function sendForm(address: string, fields: Record<string, string>): void {
  const form = document.createElement('form')
  form.method = 'post'
  form.action = address
  form.hidden = true
  for (const [name, value] of Object.entries(fields)) {
    const field = document.createElement('input')
    field.type = 'hidden'
    field.name = name
    field.value = value
    form.append(field)
  }
  document.body.append(form)
  form.submit()
  form.remove()
}
