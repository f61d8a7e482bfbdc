/*
 * Before anything is drawn: the language and the light or dark that were chosen at this screen, or else what the browser
 * asks for; paper is light. A plain script, so that no page flashes in the other one first.
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
  const paper = matchMedia('print');
  const paint = () => {
    const chosen = kept('light');
    const isDark = chosen === 'dark' || (chosen !== 'light' && dark.matches);
    root.dataset.light = isDark && !paper.matches ? 'dark' : 'light';
  };
  paint();
  dark.addEventListener('change', paint);
  paper.addEventListener('change', paint);

  const known = ['en', 'de'];
  const asked = [kept('language'), ...(navigator.languages ?? [])].filter(Boolean).map((tag) => tag.slice(0, 2).toLowerCase());
  root.lang = asked.find((tag) => known.includes(tag)) ?? 'en';
})();
