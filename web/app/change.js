/** What changed around an alarm: before and after over all layers, what may have caused it and why, what happened at the line. */
import { getJson } from './api.js';
import { cautions } from './cautions.js';
import { candidateCard } from './changeCandidate.js';
import { changeFilms } from './changeFilms.js';
import { changeTable } from './changeTable.js';
import { el, setText } from './elements.js';
import { plural } from './format.js';
import { lineLog } from './lineLog.js';
import { momentOf } from './plantClock.js';
import { troubleLine } from './trouble.js';

const MOST_SHOWN = 3;

export function mount(root, params) {
  const id = Number(params.get('alarm'));
  const trouble = troubleLine();
  const title = el('h1', {}, 'What changed');
  const place = el('p', { class: 'lead' });
  const basis = el('p', { class: 'soft' });
  const films = changeFilms();
  const table = el('div', {});
  const words = el('ul', { class: 'plain changed-words' });
  const candidates = el('div', { class: 'candidates' });
  const rate = el('p', { class: 'soft' });
  const log = el('div', {});
  root.replaceChildren(
    el('div', { class: 'change-head' }, title, place, el('nav', { class: 'ranges', 'aria-label': 'Where from' }, el('a', { href: `/alarms.html#${id}` }, 'To the alarm'))),
    trouble.node,
    el('section', { class: 'change-part' }, el('h2', {}, 'Before and after'), el('div', { class: 'change-sides' }, films.node, el('div', {}, words, table)), basis),
    el('section', { class: 'change-part' }, el('h2', {}, 'What may have caused it'), candidates, rate, cautions()),
    el('section', { class: 'change-part' }, el('h2', {}, 'What happened at the line'), log));

  async function refresh() {
    try {
      const [alarm, diagnosis, hits] = await Promise.all([
        getJson(`/api/v1/alarms/${id}`), getJson(`/api/v1/alarms/${id}/diagnosis`), getJson('/api/v1/diagnosis/hit-rate')]);
      setText(title, `What changed: ${alarm.title}`);
      setText(place, `${alarm.line}, ${alarm.structure}. Alarm since ${momentOf(alarm.openedAt)}.`);
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
  const nothing = changed.length === 0 ? [el('li', {}, 'Nothing stands out of the noise of the samples. The alarm may have been chance, or the change is too small to say more about it yet.')] : [];
  return [
    ...nothing,
    ...changed.map((one) => el('li', { data: { shape: one.shape } }, one.words, sinceWords(one.since), ...one.boundaries.map(boundaryWords))),
    ...notes.map((note) => el('li', { class: 'soft' }, note)),
  ];
}

function sinceWords(since) {
  if (since === null) {
    return null;
  }
  const from = since.notBefore === null ? `not later than ${momentOf(since.notAfter)}` : `between ${momentOf(since.notBefore)} and ${momentOf(since.notAfter)}`;
  return el('span', { class: 'soft' }, ` Began ${momentOf(since.at)}; with 95 % confidence ${from}.`);
}

function boundaryWords({ kindWords, words, at }) {
  return el('strong', { class: 'boundary' }, ` At ${kindWords}${words ? ` (${words})` : ''}, ${momentOf(at)}.`);
}

function candidateNodes(diagnosis, id) {
  if (diagnosis.candidates.length === 0) {
    return [el('p', {}, 'No cause is named: no signature fits well enough. Look at the layers above and start with the first checks at the alarm.')];
  }
  const shown = diagnosis.candidates.slice(0, MOST_SHOWN);
  const codes = new Set(shown.map(({ code }) => code));
  const unclear = diagnosis.ambiguous.filter((one) => one.codes.some((code) => codes.has(code)));
  const nameOf = (code) => diagnosis.candidates.find((one) => one.code === code)?.name ?? code;
  const left = diagnosis.candidates.length - shown.length;
  return [
    ...unclear.map(({ codes: both, words }) => el('div', { class: 'ambiguous' }, el('strong', {}, `Ambiguous: ${both.map(nameOf).join(' or ')}`), el('p', {}, words))),
    el('ol', { class: 'plain candidate-list' }, shown.map((one, i) => el('li', {}, candidateCard(one, i + 1, id)))),
    left > 0 ? el('p', { class: 'soft' }, `${plural(left, 'more signature')} fit less well and are not shown.`) : null,
  ].filter(Boolean);
}

function basisWords({ samples, from, to, limitsVersion }) {
  const usual = limitsVersion === null ? 'Usual is what the first of them were, because no limits are in force' : `Usual is what the baseline of limits version ${limitsVersion} was`;
  return `From ${plural(samples, 'sample')}, ${momentOf(from)} to ${momentOf(to)}. ${usual}.`;
}

function rateWords({ alarms, first, shown }) {
  return alarms === 0
    ? 'Nobody has named the true cause of an alarm yet, so how good these hints are here cannot be told. Name it at the alarm when it is found.'
    : `Of ${plural(alarms, 'alarm')} whose cause people named here, the first hint was right in ${first} and one of the first three in ${shown}.`;
}
