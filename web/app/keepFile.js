/** Hands a file that the page has to the browser, which keeps it where downloads go. */
import { el } from './elements.js';

const READ_BY_THEN_MS = 10_000;

export function keepFile(name, blob) {
  const link = el('a', { href: URL.createObjectURL(blob), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), READ_BY_THEN_MS);
}
