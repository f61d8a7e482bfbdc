/** The page of samples that look misread: a list to decide about, what is done about each kind, what was not measured. */
import { getJson } from './api.js';
import { el, setText } from './elements.js';
import { gaugeRoomWays } from './gaugeRoom.js';
import * as live from './live.js';
import { synchronise } from './plantClock.js';
import { throttled } from './refresh.js';
import { screeningCard, STATES } from './screeningCard.js';
import { screeningMissing } from './screeningMissing.js';
import { screeningSettings } from './screeningSettings.js';
import { troubleLine } from './trouble.js';
import { room } from './text.js';

const t = await room('screening');
const LEAST_BETWEEN_MS = 2_000;
const KINDS = ['boundary-not-found', 'neighbours-trade', 'double-trigger', 'range-end', 'lost-echo', 'couplant', 'lane-missing', 'upside-down', 'two-walls', 'other-film', 'copied', 'cycle-skip', 'unit-slip'];

export function mount(root, params) {
  const asked = { line: params.get('line'), structure: params.get('structure'), kind: params.get('kind'), state: params.get('state') ?? 'open' };
  const heading = el('h1', {}, t('title'));
  const lead = el('p', { class: 'soft screening-lead' }, t('lead'));
  const filters = el('form', { class: 'screening-filters', 'aria-label': t('whichSamples') });
  const list = el('ul', { class: 'plain suspects' });
  const nothing = el('p', { class: 'nothing', hidden: true });
  const trouble = troubleLine();
  const settings = screeningSettings();
  const missing = el('section', { class: 'missing' });
  root.replaceChildren(el('div', { class: 'screening-head' }, heading), gaugeRoomWays('screening'), lead, filters, trouble.node, nothing, list, settings.node, missing);

  async function refresh() {
    try {
      const board = await getJson('/api/v1/board');
      synchronise(board.now, board.zone);
      const { samples, most } = await getJson('/api/v1/screening', asked);
      filters.replaceChildren(...filterFields(board, asked));
      showList(samples, most);
      await showLine(board);
      trouble.clear();
    } catch (error) {
      trouble.show(error, t('notFresh'));
    }
    document.documentElement.dataset.ready = 'true';
  }

  function showList(samples, most) {
    const isOpen = asked.state === 'open';
    const key = samples.length === most ? (isOpen ? 'newestToLookAt' : 'newestN') : isOpen ? 'toLookAtN' : 'samplesN';
    setText(heading, samples.length === 0 ? t('noneMisread') : t(key, { n: samples.length }));
    nothing.hidden = samples.length > 0;
    setText(nothing, t('nothingFits'));
    list.replaceChildren(...samples.map((suspect) => screeningCard(suspect, refresh)));
  }

  async function showLine({ lines }) {
    const line = lines.find((one) => one.line === asked.line) ?? lines[0];
    const address = line ? { line: line.line, structure: asked.structure ?? line.structure.code } : null;
    if (!settings.node.contains(document.activeElement)) {
      await settings.show(address);
    }
    if (address) {
      const { shares } = await getJson(`/api/v1/lines/${encodeURIComponent(address.line)}/missing`, { structure: address.structure });
      missing.replaceChildren(el('h2', {}, t('notMeasured')), el('p', { class: 'soft' }, t('notMeasuredOf', address)), screeningMissing(shares));
    }
  }

  const calm = async () => (root.querySelector('.deciding input:focus') ? undefined : refresh());
  const refreshing = throttled(calm, LEAST_BETWEEN_MS);
  const stops = [live.on('limits', refreshing.ask), live.on('file', refreshing.ask), live.on('reload', refreshing.ask), refreshing.stop];
  refresh();
  return () => stops.forEach((stop) => stop());
}

/** Each choice is an address, so that the way back works. */
function filterFields({ lines }, asked) {
  const states = [['open', t('toLookAt')], ...STATES.map((state) => [state, t(`state.${state}`)]), ['all', t('all')]];
  return [
    field('line', t('line'), [['', t('allLines')], ...lines.map(({ line }) => [line, line])], asked),
    field('kind', t('kind'), [['', t('allKinds')], ...KINDS.map((kind) => [kind, t(`kind.${kind}`)])], asked),
    field('state', t('state'), states, asked),
    asked.structure ? el('input', { type: 'hidden', name: 'structure', value: asked.structure }) : null,
    el('button', { class: 'quiet' }, t('show')),
  ].filter(Boolean);
}

function field(name, words, choices, asked) {
  return el('label', {}, words,
    el('select', { name }, choices.map(([value, shown]) => el('option', { value, selected: (asked[name] ?? '') === value }, shown))));
}
