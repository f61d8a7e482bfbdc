/**
 * The time that is shown: usual spans as links, closer, wider, earlier and later as buttons and keys, a way back, and the keys in a
 * list. A span stands in the address, so that it can be sent to somebody and the browser's way back works.
 */
import { el } from './elements.js';
import { moment } from './plantClock.js';
import { room } from './text.js';
import { chosenSpan, MOVES, rangeOf, RANGES, writeSpan } from './timeRange.js';

const t = await room('range');
const KEYS = { '+': 'closer', '=': 'closer', '-': 'wider', 'shift+ArrowLeft': 'earlier', 'shift+ArrowRight': 'later' };
const LISTED = ['+', '-', 'shiftLeft', 'shiftRight', '0', 'b', 'arrows', 'drag', '?'];

/** `extent()` gives the span that is drawn, `moved()` draws another. Gives {node, draw, to, stop}. */
export function rangeNav(params, { extent, moved }) {
  const links = el('div', { class: 'range-links' });
  const said = el('span', { class: 'range-span', role: 'status' });
  const dialog = el('dialog', { class: 'sheet', 'aria-labelledby': 'keys-title' },
    el('h2', { id: 'keys-title' }, t('keys')),
    el('dl', { class: 'keys' }, LISTED.map((key) => el('div', {}, el('dt', {}, el('kbd', {}, t(`key.${key}`))), el('dd', {}, t(`does.${key}`))))),
    el('form', { method: 'dialog' }, el('button', { class: 'quiet' }, t('close'))));
  const back = button('back', '\u21a9', () => history.back());
  const node = el('nav', { class: 'ranges', 'aria-label': t('howFarBack') },
    links,
    el('div', { class: 'range-moves' }, button('earlier', '\u2039', () => move('earlier')), button('later', '\u203a', () => move('later')),
      button('closer', '+', () => move('closer')), button('wider', '\u2212', () => move('wider')), back, button('keys', '?', () => dialog.showModal())),
    said, dialog);

  function draw() {
    const isChosen = params.has('from') || params.has('to');
    links.replaceChildren(...RANGES.map(({ name }) => {
      const query = new URLSearchParams(params);
      query.delete('from');
      query.delete('to');
      query.set('range', name);
      return el('a', { href: `?${query}`, 'aria-current': !isChosen && name === rangeOf(params).name ? 'true' : null }, t(`range.${name}`));
    }));
    const { from, to } = chosenSpan(params);
    said.textContent = isChosen ? t('span', { from: from === null ? t('first') : moment(from), to: to === null ? t('now') : moment(to) }) : '';
    back.hidden = !isChosen;
  }

  function to(span) {
    writeSpan(params, span, 'push');
    draw();
    moved();
  }

  function move(name) {
    const span = extent();
    if (span) {
      to(MOVES[name](span));
    }
  }

  function keydown(event) {
    if (event.target.closest('input, textarea, select, dialog') || event.ctrlKey || event.altKey || event.metaKey) {
      return;
    }
    const name = KEYS[event.shiftKey && event.key.startsWith('Arrow') ? `shift+${event.key}` : event.key];
    if (name) {
      event.preventDefault();
      move(name);
    } else if (event.key === '0') {
      links.lastElementChild.click();
    } else if (event.key === 'b' && !back.hidden) {
      history.back();
    } else if (event.key === '?') {
      dialog.showModal();
    }
  }

  function came() {
    const now = new URLSearchParams(location.search);
    for (const name of ['from', 'to', 'range']) {
      if (now.has(name)) {
        params.set(name, now.get(name));
      } else {
        params.delete(name);
      }
    }
    draw();
    moved();
  }

  document.addEventListener('keydown', keydown, true);
  addEventListener('popstate', came);
  draw();
  return { node, draw, to, stop: () => (document.removeEventListener('keydown', keydown, true), removeEventListener('popstate', came)) };
}

function button(name, sign, click) {
  return el('button', { type: 'button', class: 'quiet', title: t(name), 'aria-label': t(name), data: { range: name }, on: { click } }, sign);
}
