/** Where the sign-in page leads back to: a place of our own and never the sign-in page; anything else is the board. */
export function ownAddress(to, origin = location.origin) {
  try {
    const url = new URL(to ?? '/', origin);
    const isOurs = url.origin === origin && (to ?? '/').startsWith('/');
    return isOurs && url.pathname !== '/signin.html' ? url.pathname + url.search + url.hash : '/';
  } catch {
    return '/';
  }
}
