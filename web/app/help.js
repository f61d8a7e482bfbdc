/** Help: how to read the screens, what the words and marks mean, what to do when a layer calls. */
import { cautions } from './cautions.js';
import { el } from './elements.js';
import { helpChart, helpFilm, helpRibbon } from './helpDrawings.js';
import { MEANINGS, stateWord } from './limitsWords.js';
import { mark, priorityMark } from './marks.js';
import { explain, shortTest } from './words.js';
import { room } from './text.js';

const t = await room('help');
const MARKS = ['act', 'watch', 'gauge', 'stale', 'missing', 'collecting'];
const TESTS = ['beyond-limit', 'two-of-three', 'four-of-five', 'eight-in-a-row', 'trend', 'stratification', 'mixture', 'alternation'].map((test) => ({ chart: 'xbar', test, side: 'low' }));
const AVERAGE = { chart: 'ewma', test: 'beyond-limit', side: 'low' };
const RANGE = { chart: 'range', test: 'beyond-limit', side: 'high' };
const STATES = ['collecting', 'trial', 'provisional', 'frozen', 'suspect', 'retired'];
/** How many words, steps and keys there are; each has a term and what it is. */
const WORDS = 9;
const STEPS = 4;
const KEYS = 3;

export function mount(root) {
  const film = helpFilm();
  const ribbon = helpRibbon();
  root.replaceChildren(el('div', { class: 'help' },
    el('h1', {}, t('title')),
    part(t('film'), el('div', { class: 'help-pair' }, film.node, el('ul', {},
      el('li', {}, t('film1')),
      el('li', {}, t('film2')),
      el('li', {}, t('film3')),
      el('li', {}, t('film4')),
      el('li', {}, t.nodes('film5', { link: el('a', { href: '/structures.html' }, t('structures')) }))))),
    part(t('ribbon'), el('div', { class: 'help-pair' }, ribbon.node, el('p', {}, t('ribbonText')))),
    part(t('limits'), el('div', { class: 'help-pair' }, helpChart(), el('div', {},
      el('p', {}, mark('unusual'), t('limitsUnusual')),
      el('p', {}, mark('spec'), t('limitsSpec')),
      el('p', {}, t('limitsBoth'))))),
    part(t('marks'), table(MARKS.map((name) => [mark(name), t(`mark.${name}`)])),
      el('p', { class: 'priorities' }, ['high', 'medium', 'low'].map((priority) => priorityMark(priority)))),
    part(t('tests'), table([...TESTS.map((test) => [shortTest(test), explain(test)]), [shortTest(AVERAGE), explain(AVERAGE)], [t('rangeBeyond'), explain(RANGE)]])),
    part(t('calls'), el('ol', {}, pairs(STEPS, 'step').map(([word, text]) => el('li', {}, el('strong', {}, t('row', { word })), text)))),
    part(t('cautions'), cautions()),
    part(t('rely'),
      el('p', { class: 'help-lead' }, t('relyText')),
      table(STATES.map((state) => [stateWord(state), MEANINGS[state]])),
      el('p', { class: 'help-lead' }, t.nodes('theLimits', { link: el('a', { href: '/limits.html' }, t('limitsLink')) }))),
    part(t('words'), table(pairs(WORDS, 'word'))),
    part(t('keys'), table(pairs(KEYS, 'key')))));
  const draw = () => [film, ribbon].forEach((drawing) => drawing.draw());
  const observer = new ResizeObserver(draw);
  observer.observe(root);
  document.documentElement.dataset.ready = 'true';
  return () => observer.disconnect();
}

/** [[term, what it is]] */
function pairs(n, group) {
  return Array.from({ length: n }, (_, i) => [t(`${group}.${i}`), t(`${group}Is.${i}`)]);
}

function part(title, ...body) {
  return el('section', {}, el('h2', {}, title), body);
}

function table(rows) {
  return el('dl', { class: 'help-table' }, rows.map(([term, text]) => el('div', {}, el('dt', {}, term), el('dd', {}, text))));
}
