/** The board: one sentence on top, then the film of every line. Loads no chart library. */
import { getJson } from './api.js';
import { el, setText } from './elements.js';
import { boardLine, identityOf } from './boardLine.js';
import { headline } from './headline.js';
import * as live from './live.js';
import { mark } from './marks.js';
import { moment, nowMs, synchronise } from './plantClock.js';
import { throttled } from './refresh.js';
import { troubleLine } from './trouble.js';
import { boardLegend } from './boardLegend.js';
import { emptyBoard } from './emptyBoard.js';
import { wall } from './wall.js';
import { room } from './text.js';

const t = await room('board');
const LEAST_BETWEEN_MS = 250;
/** Asked again even when nothing happens, so that a line that fell silent turns stale. */
const ANYWAY_EVERY_MS = 20_000;

export function mount(root, params) {
  const top = headlineOf();
  const trouble = troubleLine();
  const lines = el('div', { class: 'lines' });
  const below = el('div', {});
  root.replaceChildren(el('h1', { class: 'for-readers' }, t('title')), top.node, trouble.node, lines, below);
  let bands = [];
  const onWall = params.has('wall') ? wall(lines) : null;

  function show(board, alarms) {
    synchronise(board.now, board.zone);
    top.update(headline(board, alarms));
    bands = board.lines.map((bare) => {
      const line = { ...bare, alarms: alarms.filter((alarm) => alarm.line === bare.line) };
      const kept = bands.find((band) => band.identity === identityOf(line));
      kept?.update(line);
      return kept ?? boardLine(line);
    });
    document.documentElement.dataset.density = board.lines.length > 3 ? 'many' : 'few';
    if (bands.length !== lines.children.length || bands.some((band, i) => lines.children[i] !== band.node)) {
      lines.replaceChildren(...bands.map((band) => band.node));
    }
    showBelow(below, board.lines.length > 0);
    onWall?.arrange(board);
    bands.forEach((band) => band.draw());
  }

  async function refresh() {
    try {
      const [board, { alarms }] = await Promise.all([getJson('/api/v1/board'), getJson('/api/v1/alarms', { state: 'open' })]);
      show(board, alarms);
      trouble.clear();
      document.documentElement.dataset.ready = 'true';
    } catch (error) {
      trouble.show(error, t('notFresh'));
    }
  }

  const refreshing = throttled(refresh, LEAST_BETWEEN_MS);
  const stops = [
    ...['sample', 'alarm', 'limits', 'line', 'reload'].map((topic) => live.on(topic, refreshing.ask)),
    live.on('state', (state) => (state === 'lost' ? trouble.say(t('lostSince', { time: moment(nowMs()) })) : refreshing.ask())),
    every(1_000, () => bands.forEach((band) => band.tick())),
    every(ANYWAY_EVERY_MS, refreshing.ask),
    watchWidth(lines, () => bands.forEach((band) => band.draw())),
    refreshing.stop,
    () => onWall?.stop(),
  ];
  refreshing.ask();
  return () => stops.forEach((stop) => stop());
}

function showBelow(below, hasLines) {
  const kind = hasLines ? 'legend' : 'empty';
  if (below.dataset.kind !== kind) {
    below.dataset.kind = kind;
    below.replaceChildren(hasLines ? boardLegend() : emptyBoard());
  }
}

function headlineOf() {
  const state = el('span', { class: 'headline-mark' });
  const sentence = el('strong', {});
  const detail = el('span', { class: 'headline-detail' });
  const action = el('span', { class: 'headline-action' });
  const node = el('div', { class: 'headline', role: 'status' }, state, el('p', {}, sentence, ' ', detail), action);
  let before = '';
  const update = (now) => {
    if (JSON.stringify(now) === before) {
      return;
    }
    before = JSON.stringify(now);
    node.dataset.need = now.need;
    node.dataset.taken = now.isTaken === true;
    state.replaceChildren(...(now.need === 'calm' ? [] : [mark(now.need)]));
    setText(sentence, now.sentence);
    setText(detail, now.detail);
    action.replaceChildren(...(now.action ? [el('a', { class: now.isTaken ? 'button quiet' : 'button', href: now.action.href }, now.action.words)] : []));
  };
  return { node, update };
}

function every(ms, act) {
  const timer = setInterval(act, ms);
  return () => clearInterval(timer);
}

function watchWidth(node, act) {
  const observer = new ResizeObserver(act);
  observer.observe(node);
  document.fonts?.ready.then(act);
  return () => observer.disconnect();
}
