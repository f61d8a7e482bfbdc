/** The alarms: a list by urgency and one alarm in full, chosen by `#id` in the address. Stays live. */
import { getJson } from './api.js';
import { el, setText } from './elements.js';
import { alarmCard } from './alarmCard.js';
import { alarmDetail } from './alarmDetail.js';
import { byUrgency, isHeld, isWaiting } from './alarmWords.js';
import * as live from './live.js';
import { throttled } from './refresh.js';
import { troubleLine } from './trouble.js';
import { room } from './text.js';

const t = await room('alarms');
const LEAST_BETWEEN_MS = 1_000;

export function mount(root, params) {
  const words = (params.get('words') ?? '').trim();
  const show = words ? 'found' : params.get('state') === 'all' ? 'all' : 'open';
  const heading = el('h1', {});
  const trouble = troubleLine();
  const list = el('div', { class: 'alarm-list' });
  const place = el('div', { class: 'alarm-place' });
  root.replaceChildren(
    el('div', { class: 'alarms-head' }, heading, searchForm(words), tabs(show)), trouble.node,
    el('div', { class: 'alarms-body' }, list, place));
  const cards = new Map();
  let alarms = [];
  let causes = null;
  let detail = null;
  let order = [];

  const hooks = { changed: (alarm) => (replace(alarm), draw()), refused: () => refreshing.ask() };

  function replace(alarm) {
    alarms = alarms.map((one) => (one.id === alarm.id ? alarm : one));
  }

  async function refresh() {
    try {
      causes ??= (await getJson('/api/v1/causes')).causes;
      alarms = (await (words ? getJson('/api/v1/alarms/search', { words }) : getJson('/api/v1/alarms', { state: show }))).alarms;
      await addSelected();
      trouble.clear();
      draw();
    } catch (error) {
      trouble.show(error, t('notFresh'));
    }
    document.documentElement.dataset.ready = 'true';
  }

  /** An alarm that the address names is shown even when the list leaves it out. */
  async function addSelected() {
    const id = selectedId();
    if (id !== null && !alarms.some((alarm) => alarm.id === id)) {
      alarms = [...alarms, await getJson(`/api/v1/alarms/${id}`)];
    }
  }

  function draw() {
    const sorted = inOrder(alarms);
    const named = sorted.find((alarm) => alarm.id === selectedId());
    const chosen = named ?? sorted[0] ?? null;
    root.dataset.selected = named !== undefined;
    setText(heading, words ? foundWords(sorted.length, words) : headingOf(sorted));
    const shown = sorted.map((alarm) => {
      const card = cards.get(alarm.id) ?? alarmCard(alarm, hooks);
      cards.set(alarm.id, card);
      card.update(alarm, alarm === chosen);
      return card.node;
    });
    arrange(list, shown.length > 0 ? shown : [nothing(show)]);
    drawDetail(chosen);
  }

  function drawDetail(chosen) {
    if (chosen === null) {
      detail = null;
      place.replaceChildren();
    } else if (detail?.id === chosen.id) {
      detail.update(chosen);
    } else {
      detail = alarmDetail(chosen, causes, hooks);
      place.replaceChildren(detail.node);
    }
  }

  /** By urgency at first; then each stays where it is until a new one comes, so that nothing moves under a finger. */
  function inOrder(all) {
    if (all.some((alarm) => !order.includes(alarm.id))) {
      order = [...all].sort(byUrgency).map((alarm) => alarm.id);
    }
    return [...all].sort((a, b) => order.indexOf(a.id) - order.indexOf(b.id));
  }

  const chosenAnew = () => refresh().then(() => window.scrollTo(0, 0));
  const refreshing = throttled(refresh, LEAST_BETWEEN_MS);
  const stops = [
    live.on('alarm', refreshing.ask),
    live.on('reload', refreshing.ask),
    refreshing.stop,
    () => window.removeEventListener('hashchange', chosenAnew),
  ];
  window.addEventListener('hashchange', chosenAnew);
  refreshing.ask();
  return () => stops.forEach((stop) => stop());
}

function selectedId() {
  const id = Number(location.hash.slice(1));
  return Number.isInteger(id) && id > 0 ? id : null;
}

function headingOf(alarms) {
  const open = alarms.filter((alarm) => !alarm.closed);
  const waiting = open.filter(isWaiting).length;
  if (open.length === 0) {
    return t('noneOpen');
  }
  const held = open.filter(isHeld).length;
  const taken = waiting === 0 ? t('allTaken') : waiting === open.length ? t('noneTaken') : t('someWait', { waiting });
  const said = [held === open.length ? '' : taken, held > 0 ? t('heldBack', { held }) : ''].filter(Boolean);
  return [t('openHead', { n: open.length }), ...said].join(', ');
}

function foundWords(n, words) {
  return n === 0 ? t('foundNone', { words }) : t('found', { n, words });
}

/** Comments, causes and actions are searched, of closed alarms too. */
function searchForm(words) {
  return el('form', { class: 'alarm-search', role: 'search', method: 'get', action: '/alarms.html' },
    el('label', { for: 'alarm-words', class: 'for-readers' }, t('findLabel')),
    el('input', { id: 'alarm-words', type: 'search', name: 'words', value: words, maxlength: 100, required: true, placeholder: t('findIn'), autocomplete: 'off' }),
    el('button', { class: 'quiet' }, t('find')));
}

function nothing(show) {
  if (show === 'found') {
    return el('p', { class: 'nothing' }, t('lookedThrough'));
  }
  const words = show === 'open' ? t('nothingWaits') : t('neverYet');
  return el('p', { class: 'nothing' }, words);
}

function tabs(show) {
  const tab = (name, words, search) => el('a', { href: `/alarms.html${search}`, 'aria-current': name === show ? 'page' : null }, words);
  return el('nav', { class: 'ranges', 'aria-label': t('which') }, tab('open', t('open'), ''), tab('all', t('all'), '?state=all'),
    el('a', { href: '/rolls.html' }, t('rolls')), el('a', { href: '/causes.html' }, t('causesAndChecks')),
    el('a', { href: '/figures.html' }, t('howGood')));
}

/** Puts nodes in order without touching those that are already in place, so that focus stays. */
function arrange(parent, nodes) {
  nodes.forEach((node, i) => parent.children[i] !== node && parent.insertBefore(node, parent.children[i] ?? null));
  while (parent.children.length > nodes.length) {
    parent.lastChild.remove();
  }
}
