/*
 * Before anything is drawn: the language and the light or dark that were chosen at this screen, or else what the browser
 * asks for. A plain script, so that no page flashes in the other one first.
 */
(() => {
  const root = document.documentElement;
  const kept = (name) => {
    try {
      return localStorage.getItem(`filmward.${name}`);
    } catch {
      return null;
    }
  };
  const dark = matchMedia('(prefers-color-scheme: dark)');
  const paint = () => {
    const chosen = kept('light');
    root.dataset.light = chosen === 'dark' || (chosen !== 'light' && dark.matches) ? 'dark' : 'light';
  };
  paint();
  dark.addEventListener('change', paint);

  const known = ['en', 'de'];
  const asked = [kept('language'), ...(navigator.languages ?? [])].filter(Boolean).map((tag) => tag.slice(0, 2).toLowerCase());
  root.lang = asked.find((tag) => known.includes(tag)) ?? 'en';
})();
