/** The marks above the ribbons: each event at its time, those that would cover each other as one with a count; in words on hover, focus and tap. */
import { el, setText } from './elements.js';
import { keyOf, marksApart } from './lineEventGroups.js';
import { eventMark, togetherInWords } from './lineEventWords.js';
import { room } from './text.js';

const t = await room('line');
/** In rem: a mark alone, one with a count but its digits, a digit, between two. */
const [ALONE, COUNTED, DIGIT, GAP] = [1.625, 2, 0.5, 0.2];

export function lineMarks() {
  const said = el('p', { class: 'line-said', role: 'status' });
  const marks = el('div', { class: 'line-events', role: 'group', 'aria-label': t('events') });
  ['mouseover', 'focusin', 'click'].forEach((name) => marks.addEventListener(name, ({ target }) => tell(target.closest('.event-flag'))));

  function tell(mark) {
    if (mark) {
      setText(said, mark.getAttribute('aria-label'));
    }
  }

  /** `places` as [{x, event}] from the left of a strip that is so wide and begins at `left`. */
  function draw(places, left, width) {
    const rem = parseFloat(getComputedStyle(document.documentElement).fontSize);
    const widthOf = (n) => rem * (n === 1 ? ALONE : COUNTED + DIGIT * String(n).length);
    const apart = marksApart(places, { width, widthOf, gap: GAP * rem });
    const focused = marks.contains(document.activeElement) ? document.activeElement.dataset.key : null;
    marks.replaceChildren(...apart.map(({ x, events }) => mark(events, left + x, widthOf(events.length))));
    if (focused !== null) {
      [...marks.children].find(({ dataset }) => dataset.key === focused)?.focus({ preventScroll: true });
    }
  }
  return { said, node: marks, draw };
}

function mark(events, middle, width) {
  const loudest = events.find(({ kind }) => kind === 'alarm') ?? events[0];
  const words = togetherInWords(events);
  const node = el('button', { type: 'button', class: 'event-flag', title: words, 'aria-label': words, data: { kind: loudest.kind, n: events.length, key: keyOf(events.at(-1)) } },
    eventMark(loudest), events.length > 1 ? el('span', { 'aria-hidden': 'true' }, events.length) : null);
  node.style.left = `${middle - width / 2}px`;
  node.style.width = `${width}px`;
  return node;
}
