/** The head of the layer page: which layer of which film, what is the matter in one sentence, steps to its neighbours. */
import { el, setText } from './elements.js';
import { age, list, plural, um } from './format.js';
import { exportedWords } from './layerReadings.js';
import { mark } from './marks.js';
import { alarmOf, needOfLayer } from './need.js';
import { moment } from './plantClock.js';
import { direction } from './words.js';

/** `addressOf(line, layer)` is where a neighbour is shown. */
export function layerHead(addressOf) {
  const title = el('h1', {}, 'Layer');
  const need = el('span', { class: 'layer-need' });
  const place = el('p', { class: 'soft' });
  const summary = el('p', { class: 'summary' });
  const steps = el('nav', { class: 'steps', 'aria-label': 'Neighbouring layers' });
  const node = el('div', { class: 'layer-head' }, el('div', {}, el('div', { class: 'title' }, title, need), place), steps, summary);

  function show(series, view) {
    const { line, layer } = view;
    const name = series.characteristic.name || `layer ${series.characteristic.position}`;
    setText(title, name);
    document.title = `${name}, ${series.line} · Filmward`;
    const state = layer ? needOfLayer(layer, line) : 'calm';
    const stale = line?.stale ? [mark('stale', `stale: no sample for ${age(line.ageSeconds)}`)] : [];
    need.replaceChildren(...(state === 'calm' || state === 'note' ? [] : [mark(state)]), ...stale);
    node.dataset.need = state;
    place.replaceChildren(el('a', { href: '/' }, series.line), `, ${series.structure.code}: ${series.structure.name}${placeOf(series, line)}`);
    const alarm = layer ? alarmOf(layer, line) : undefined;
    node.dataset.taken = Boolean(alarm?.acknowledged);
    summary.replaceChildren(sentence(series), ...(alarm ? [' ', el('a', { href: `/alarms.html#${alarm.id}` }, alarm.acknowledged ? `Alarm taken by ${alarm.acknowledged.by}` : 'Open alarm: nobody has taken it')] : []));
    steps.replaceChildren(...neighbours(line, layer).map(([key, words, target]) =>
      el('a', { class: 'button quiet', href: addressOf(line, target), rel: key, 'aria-keyshortcuts': key === 'prev' ? 'ArrowLeft' : 'ArrowRight' }, `${words} ${target.name || `layer ${target.position}`}`)));
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
  return kind === 'layer' && line ? `, layer ${position} of ${line.layers.length} from the outer face` : '';
}

/** The charts in a sentence, for everybody and for screen readers above all. */
function sentence(series) {
  return series.shown === 'exported' ? exportedWords(series) : correctedWords(series);
}

function correctedWords({ columns, signals, samples }) {
  const n = columns.takenAt.length;
  const unusual = new Set(signals.map((signal) => signal.index)).size;
  const count = unusual === 0 ? 'none is unusual' : `${plural(unusual, 'is', 'are')} unusual`;
  const lastMean = columns.mean.at(-1);
  const now = lastMean === null ? 'The newest was not measured' : `The newest has a mean of ${um(lastMean)} µm${newest(signals, n - 1)}`;
  return `${plural(samples, 'sample')} since ${moment(columns.takenAt[0])}, of which ${count}. ${now}.`;
}

function newest(signals, last) {
  const found = [...new Set(signals.filter((signal) => signal.index === last).map(direction))];
  return found.length > 0 ? `, ${list(found)} than usual` : '';
}
