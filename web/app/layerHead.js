/** The head of the layer page: which layer of which film, what is the matter in one sentence, steps to its neighbours. */
import { el, setText } from './elements.js';
import { age, list, um } from './format.js';
import { exportedWords } from './layerReadings.js';
import { mark } from './marks.js';
import { alarmOf, needOfLayer } from './need.js';
import { moment } from './plantClock.js';
import { direction, layerName } from './words.js';
import { room } from './text.js';

const t = await room('layer');

/** `addressOf(line, layer)` is where a neighbour is shown. */
export function layerHead(addressOf) {
  const title = el('h1', {}, t('layer'));
  const need = el('span', { class: 'layer-need' });
  const place = el('p', { class: 'soft' });
  const summary = el('p', { class: 'summary' });
  const steps = el('nav', { class: 'steps', 'aria-label': t('neighbours') });
  const node = el('div', { class: 'layer-head' }, el('div', {}, el('div', { class: 'title' }, title, need), place), steps, summary);

  function show(series, view) {
    const { line, layer } = view;
    const name = layerName(series.characteristic);
    setText(title, name);
    document.title = t('title', { name, line: series.line });
    const state = layer ? needOfLayer(layer, line) : 'calm';
    const stale = line?.stale ? [mark('stale', t('stale', { age: age(line.ageSeconds) }))] : [];
    need.replaceChildren(...(state === 'calm' || state === 'note' ? [] : [mark(state)]), ...stale);
    node.dataset.need = state;
    place.replaceChildren(el('a', { href: '/' }, series.line), `, ${series.structure.code}: ${series.structure.name}${placeOf(series, line)}`);
    const alarm = layer ? alarmOf(layer, line) : undefined;
    node.dataset.taken = Boolean(alarm?.acknowledged);
    summary.replaceChildren(sentence(series), ...(alarm ? [' ', el('a', { href: `/alarms.html#${alarm.id}` }, alarm.acknowledged ? t('takenBy', { by: alarm.acknowledged.by }) : t('openAlarm'))] : []));
    steps.replaceChildren(...neighbours(line, layer).map(([key, words, target]) =>
      el('a', { class: 'button quiet', href: addressOf(line, target), rel: key, 'aria-keyshortcuts': key === 'prev' ? 'ArrowLeft' : 'ArrowRight' }, `${words} ${layerName(target)}`)));
  }
  return { node, show };
}

/** [[rel, words, layer]] for the layer before and after, the total last. */
function neighbours(line, layer) {
  const all = line ? [...line.layers, line.total] : [];
  const at = all.indexOf(layer);
  const [before, after] = at < 0 ? [] : [all[at - 1], all[at + 1]];
  return [...(before ? [['prev', '\u2190', before]] : []), ...(after ? [['next', '\u2192', after]] : [])];
}

function placeOf({ characteristic: { kind, position } }, line) {
  return kind === 'layer' && line ? t('place', { position, n: line.layers.length }) : '';
}

/** The charts in a sentence, for everybody and for screen readers above all. */
function sentence(series) {
  return series.shown === 'exported' ? exportedWords(series) : correctedWords(series);
}

function correctedWords({ columns, signals, samples }) {
  const n = columns.takenAt.length;
  const unusual = new Set(signals.map((signal) => signal.index)).size;
  const count = unusual === 0 ? t('noneUnusual') : t('someUnusual', { n: unusual });
  const lastMean = columns.mean.at(-1);
  const now = lastMean === null ? t('newestMissing') : newest(t('newestIs', { mean: um(lastMean) }), signals, n - 1);
  return t('samplesSince', { n: samples, since: moment(columns.takenAt[0]), unusual: count, newest: now });
}

function newest(mean, signals, last) {
  const found = [...new Set(signals.filter((signal) => signal.index === last).map(direction))];
  return found.length > 0 ? t('thanUsual', { mean, how: list(found) }) : mean;
}
