/** What changed around an alarm: before and after over all layers, what may have caused it and why, what happened at the line. */
import { getJson } from './api.js';
import { cautions } from './cautions.js';
import { candidateCard } from './changeCandidate.js';
import { changeFilms } from './changeFilms.js';
import { changeTable } from './changeTable.js';
import { el, setText } from './elements.js';
import { lineLog } from './lineLog.js';
import { leadOn } from './nothingYet.js';
import { momentOf } from './plantClock.js';
import { troubleLine } from './trouble.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('change');
const say = await sayings('alarms', 'diagnosis');

const MOST_SHOWN = 3;

export function mount(root, params) {
  if (!params.has('alarm')) {
    root.replaceChildren(el('div', { class: 'change-head' }, el('h1', {}, t('title'))), leadOn(t('whichAlarm'), '/alarms.html', t('toAlarms')));
    document.documentElement.dataset.ready = 'true';
    return () => {};
  }
  const id = Number(params.get('alarm'));
  const trouble = troubleLine();
  const title = el('h1', {}, t('title'));
  const place = el('p', { class: 'lead' });
  const basis = el('p', { class: 'soft' });
  const films = changeFilms();
  const table = el('div', {});
  const words = el('ul', { class: 'plain changed-words' });
  const candidates = el('div', { class: 'candidates' });
  const rate = el('p', { class: 'soft' });
  const log = el('div', {});
  root.replaceChildren(
    el('div', { class: 'change-head' }, title, place, el('nav', { class: 'ranges', 'aria-label': t('whereFrom') }, el('a', { href: `/alarms.html#${id}` }, t('toAlarm')))),
    trouble.node,
    el('section', { class: 'change-part' }, el('h2', {}, t('beforeAfter')), el('div', { class: 'change-sides' }, films.node, el('div', {}, words, table)), basis),
    el('section', { class: 'change-part' }, el('h2', {}, t('mayHaveCaused')), candidates, rate, cautions()),
    el('section', { class: 'change-part' }, el('h2', {}, t('atLine')), log));

  async function refresh() {
    try {
      const [alarm, diagnosis, hits] = await Promise.all([
        getJson(`/api/v1/alarms/${id}`), getJson(`/api/v1/alarms/${id}/diagnosis`), getJson('/api/v1/diagnosis/hit-rate')]);
      setText(title, t('titleOf', { title: say(alarm.title) }));
      setText(place, t('place', { line: alarm.line, structure: alarm.structure, since: momentOf(alarm.openedAt) }));
      setText(basis, basisWords(diagnosis));
      films.show(diagnosis.sides, movesOf(diagnosis));
      table.replaceChildren(...changeTable(diagnosis.sides, movesOf(diagnosis)));
      words.replaceChildren(...changedWords(diagnosis));
      candidates.replaceChildren(...candidateNodes(diagnosis, id));
      setText(rate, rateWords(hits.all));
      log.replaceChildren(lineLog(alarm.line, refresh).node);
      trouble.clear();
    } catch (error) {
      trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }
  refresh();
  const off = films.listen();
  return () => off();
}

function movesOf({ changed }) {
  return changed.find(({ moves }) => moves.length > 0)?.moves ?? [];
}

function changedWords({ changed, notes }) {
  const nothing = changed.length === 0 ? [el('li', {}, t('nothing'))] : [];
  return [
    ...nothing,
    ...changed.map((one) => el('li', { data: { shape: one.shape } }, say(one.words), sinceWords(one.since), ...one.boundaries.map(boundaryWords))),
    ...notes.map((note) => el('li', { class: 'soft' }, say(note))),
  ];
}

function sinceWords(since) {
  if (since === null) {
    return null;
  }
  const [at, to] = [momentOf(since.at), momentOf(since.notAfter)];
  return el('span', { class: 'soft' }, since.notBefore === null ? t('beganBy', { at, to }) : t('began', { at, from: momentOf(since.notBefore), to }));
}

function boundaryWords({ kindWords, words, at }) {
  return el('strong', { class: 'boundary' }, t(words ? 'boundaryNamed' : 'boundary', { kind: say(kindWords), words: say(words), at: momentOf(at) }));
}

function candidateNodes(diagnosis, id) {
  if (diagnosis.candidates.length === 0) {
    return [el('p', {}, t('noCause'))];
  }
  const shown = diagnosis.candidates.slice(0, MOST_SHOWN);
  const codes = new Set(shown.map(({ code }) => code));
  const unclear = diagnosis.ambiguous.filter((one) => one.codes.some((code) => codes.has(code)));
  const nameOf = (code) => diagnosis.candidates.find((one) => one.code === code)?.name ?? code;
  const left = diagnosis.candidates.length - shown.length;
  return [
    ...unclear.map(({ codes: both, words }) => el('div', { class: 'ambiguous' }, el('strong', {}, t('ambiguous', { names: both.map(nameOf).map(say).reduce((one, other) => t('or', { one, other })) })), el('p', {}, say(words)))),
    el('ol', { class: 'plain candidate-list' }, shown.map((one, i) => el('li', {}, candidateCard(one, i + 1, id)))),
    left > 0 ? el('p', { class: 'soft' }, t('fitLess', { n: left })) : null,
  ].filter(Boolean);
}

function basisWords({ samples, from, to, limitsVersion }) {
  return t(limitsVersion === null ? 'basisNone' : 'basis', { n: samples, from: momentOf(from), to: momentOf(to), version: limitsVersion });
}

function rateWords({ alarms, first, shown }) {
  return alarms === 0
    ? t('noRate')
    : t('rate', { n: alarms, first, shown });
}
