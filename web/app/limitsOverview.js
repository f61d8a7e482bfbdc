/** The limits of all lines, for somebody who came without naming one. */
import { getJson } from './api.js';
import { el } from './elements.js';
import { nothingYet } from './nothingYet.js';
import { troubleLine } from './trouble.js';
import { limitsInWords } from './words.js';
import { room } from './text.js';

const t = await room('limits');

export function limitsAddress(line, structure) {
  return `/limits.html?${new URLSearchParams({ line, structure })}`;
}

export function testsOf(line, structure) {
  return `/tests.html?${new URLSearchParams({ line, structure })}`;
}

export function limitsOverview(root) {
  const trouble = troubleLine();
  const lines = el('ul', { class: 'plain limits-lines' });
  root.replaceChildren(el('div', { class: 'limits-head' }, el('h1', {}, t('title'))), trouble.node, lines);
  getJson('/api/v1/board').then(show, trouble.show).finally(() => (document.documentElement.dataset.ready = 'true'));

  async function show(board) {
    if (board.lines.length === 0) {
      root.append(await nothingYet(t('noFilm')));
    }
    lines.replaceChildren(...board.lines.map(({ line, structure, limits }) =>
      el('li', {}, t.nodes('lineIs', { film: el('a', { href: limitsAddress(line, structure.code) }, t('film', { line, structure: structure.code })), limits: limitsInWords(limits) }))));
  }
  return () => {};
}
