/** Text as HTML shows it, and as nothing else: within elements and within quoted attributes. */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"'`]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
