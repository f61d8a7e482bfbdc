/** The page of samples that look misread: a list to decide about, what is done about each kind, what was not measured. */
import { getJson } from './api.js';
import { el, setText } from './elements.js';
import { plural } from './format.js';
import { gaugeRoomWays } from './gaugeRoom.js';
import * as live from './live.js';
import { synchronise } from './plantClock.js';
import { throttled } from './refresh.js';
import { screeningCard, STATES } from './screeningCard.js';
import { screeningMissing } from './screeningMissing.js';
import { screeningSettings } from './screeningSettings.js';
import { troubleLine } from './trouble.js';

const LEAST_BETWEEN_MS = 2_000;
const KINDS = ['boundary-not-found', 'neighbours-trade', 'double-trigger', 'range-end', 'lost-echo', 'couplant', 'lane-missing', 'upside-down', 'two-walls', 'other-film', 'copied', 'cycle-skip', 'unit-slip'];

export function mount(root, params) {
  const asked = { line: params.get('line'), structure: params.get('structure'), kind: params.get('kind'), state: params.get('state') ?? 'open' };
  const heading = el('h1', {}, 'Screening');
  const lead = el('p', { class: 'soft screening-lead' }, 'Samples whose pattern says that the gauge misread them. What is held out is on no chart, in no figure and raises no alarm until somebody puts it back.');
  const filters = el('form', { class: 'screening-filters', 'aria-label': 'Which samples' });
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
      trouble.show(error, 'This list is not fresh.');
    }
    document.documentElement.dataset.ready = 'true';
  }

  function showList(samples, most) {
    const words = samples.length === 0 ? 'no sample looks misread' : `${samples.length === most ? 'the newest ' : ''}${plural(samples.length, 'sample')} ${asked.state === 'open' ? 'to look at' : ''}`.trim();
    setText(heading, words[0].toUpperCase() + words.slice(1));
    nothing.hidden = samples.length > 0;
    setText(nothing, 'Nothing fits what is asked for above.');
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
      missing.replaceChildren(el('h2', {}, 'Readings not measured'), el('p', { class: 'soft' }, `${address.line}, ${address.structure}, the last 14 days. Above 5 % look at couplant, dirt and probe.`), screeningMissing(shares));
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
  const states = [['open', 'to look at'], ...Object.entries(STATES), ['all', 'all']];
  return [
    field('line', 'Line', [['', 'all lines'], ...lines.map(({ line }) => [line, line])], asked),
    field('kind', 'Kind', [['', 'all kinds'], ...KINDS.map((kind) => [kind, kind.replaceAll('-', ' ')])], asked),
    field('state', 'State', states, asked),
    asked.structure ? el('input', { type: 'hidden', name: 'structure', value: asked.structure }) : null,
    el('button', { class: 'quiet' }, 'Show'),
  ].filter(Boolean);
}

function field(name, words, choices, asked) {
  return el('label', {}, words,
    el('select', { name }, choices.map(([value, shown]) => el('option', { value, selected: (asked[name] ?? '') === value }, shown))));
}
