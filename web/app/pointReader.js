/**
 * Reads one sample of the charts aloud: by pointer, tap or arrow keys, with one cursor through both
 * charts and the words of the sample beside them. The charts are sliders for assistive technology.
 */
import { getJson } from './api.js';
import { correctionInWords } from './corrections.js';
import { el, setText } from './elements.js';
import { shape } from './marks.js';
import { um } from './format.js';
import { moment } from './plantClock.js';
import { explain } from './words.js';
import { room } from './text.js';

const t = await room('layer');
const REST_MS = 300;
const STEPS = { ArrowLeft: -1, ArrowRight: 1, PageUp: -10, PageDown: 10, Home: -Infinity, End: Infinity };

export function pointReader(panels) {
  const words = el('p', { class: 'reader-words' });
  const tests = el('ul', { class: 'plain reader-tests' });
  const corrected = el('ul', { class: 'plain reader-corrected' });
  const node = el('div', { class: 'reader', role: 'region', tabindex: 0, 'aria-label': t('underCursor') }, words, tests, corrected);
  const cursors = panels.map((panel) => {
    const cursor = el('span', { class: 'cursor', 'aria-hidden': 'true' });
    panel.node.append(cursor);
    return cursor;
  });
  let series = null;
  let index = -1;
  let asking = 0;

  function read(at) {
    const { columns, signals } = series;
    index = Math.max(0, Math.min(columns.takenAt.length - 1, at));
    const sentence = sampleInWords(series, index);
    const found = signals.filter((signal) => signal.index === index).map(explain);
    setText(words, sentence);
    tests.replaceChildren(...found.map((text) => el('li', {}, shape('unusual'), el('span', {}, text))));
    askForCorrections(columns.roll[index], columns.sample[index]);
    panels.filter(isDrawn).forEach((panel) => {
      placeCursor(panel, cursors[panels.indexOf(panel)], columns.takenAt[index]);
      panel.node.setAttribute('aria-valuenow', index);
      panel.node.setAttribute('aria-valuetext', [sentence, ...found].join(' '));
    });
  }

  /** Asked for when the cursor rests on a sample; what was said of another one goes at once. */
  function askForCorrections(roll, sample) {
    const { line, structure, characteristic } = series;
    const whose = JSON.stringify([line, structure.code, characteristic, roll, sample]);
    clearTimeout(asking);
    if (corrected.dataset.whose !== whose) {
      corrected.replaceChildren();
      corrected.dataset.whose = whose;
    }
    asking = setTimeout(async () => {
      const found = await getJson('/api/v1/corrections', { line, structure: structure.code, roll, sample }).catch(() => ({ corrections: [] }));
      if (corrected.dataset.whose === whose) {
        const here = found.corrections.filter(({ layer }) => characteristic.kind === 'total' || layer === characteristic.position);
        corrected.replaceChildren(...here.map((one) => el('li', {}, correctionInWords(one))));
      }
    }, REST_MS);
  }

  /** On a small screen the words stay in sight from the first question on, and not before. */
  function ask(at) {
    node.dataset.asked = 'true';
    read(at);
  }

  /** Keeps the sample that is being read; one that was the newest moves on to the new newest. */
  function show(next) {
    const wasNewest = series === null || index >= series.columns.takenAt.length - 1;
    const time = series?.columns.takenAt[index];
    series = next;
    const last = next.columns.takenAt.length - 1;
    panels.forEach(({ node: chart }) => {
      chart.setAttribute('aria-valuemin', 0);
      chart.setAttribute('aria-valuemax', last);
    });
    const kept = next.columns.takenAt.indexOf(time);
    read(wasNewest || kept < 0 ? last : kept);
  }

  panels.forEach((panel) => listen(panel, {
    toTime: (ms) => series && ask(nearest(series.columns.takenAt, ms)),
    by: (step) => series && ask(index + step),
  }));
  const current = () => (series === null || index < 0 ? null : { at: series.columns.takenAt[index], roll: series.columns.roll[index], sample: series.columns.sample[index], line: series.line });
  return { node, show, current, redraw: () => series && read(index) };
}

function listen(panel, { toTime, by }) {
  const follow = (event) => toTime(panel.timeAt(event.clientX));
  panel.node.addEventListener('pointermove', follow);
  panel.node.addEventListener('pointerdown', follow);
  panel.node.addEventListener('keydown', (event) => {
    if (event.key in STEPS && !event.ctrlKey && !event.altKey && !event.metaKey) {
      event.preventDefault();
      event.stopPropagation();
      by(STEPS[event.key]);
    }
  });
}

/** A chart in a part of the page that is folded away has no place for a cursor. */
const isDrawn = ({ node }) => node.offsetParent !== null;

function placeCursor(panel, cursor, ms) {
  const area = panel.areaOf();
  cursor.style.left = `${panel.pixelOf(ms)}px`;
  cursor.style.top = `${area.top}px`;
  cursor.style.height = `${area.bottom - area.top}px`;
}

function nearest(times, ms) {
  let [low, high] = [0, times.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    [low, high] = times[middle] < ms ? [middle, high] : [low, middle];
  }
  return ms - times[low] <= times[high] - ms ? low : high;
}

function sampleInWords({ columns, heldOut = [] }, i) {
  const where = t('where', { at: moment(columns.takenAt[i]), roll: columns.roll[i], sample: columns.sample[i] });
  const held = heldOut.find(({ roll, sample }) => roll === columns.roll[i] && sample === columns.sample[i]);
  if (held) {
    const evidence = held.evidence.join(' ');
    return held.mean === null ? t('held', { where, evidence }) : t('heldAs', { where, mean: um(held.mean), evidence });
  }
  if (columns.mean[i] === null) {
    return t('notMeasured', { where });
  }
  const figures = { where, mean: um(columns.mean[i]), range: um(columns.range[i]), n: columns.size[i], least: um(columns.least[i]), greatest: um(columns.greatest[i]) };
  const words = t(columns.range[i] === null ? 'meanOnly' : 'meanRange', figures);
  const average = columns.average?.[i] ?? null;
  return average === null ? words : t('withAverage', { words, average: um(average) });
}
