/** The head of every page: word mark, ways to the pages, whether data flow, the plant's clock, who is here. */
import { isWaiting } from './alarmWords.js';
import { getJson } from './api.js';
import { display } from './display.js';
import { el, setText, svg } from './elements.js';
import { shape } from './marks.js';
import * as live from './live.js';
import { may, who } from './person.js';
import { isSynchronised, moment, nowMs, timeWithSeconds } from './plantClock.js';
import { throttled } from './refresh.js';
import { signInNotice } from './signInNotice.js';
import { save } from './save.js';
import { room } from './text.js';
import { whoIsHere } from './whoIsHere.js';

const t = await room('frame');

const PAGES = [
  ['board', '/', 'read'],
  ['alarms', '/alarms.html', 'read'],
  ['handover', '/handover.html', 'read'],
  ['report', '/report.html', 'read'],
  ['intake', '/intake.html', 'read'],
  ['gauge', '/gauge.html', 'read'],
  ['help', '/help.html', 'anybody'],
];
/** For whoever sets the plant up; folded, since it is seldom needed. */
const SET_UP = [
  ['structures', '/structures.html', 'read'],
  ['causes', '/causes.html', 'decide'],
  ['signatures', '/signatures.html', 'decide'],
  ['shifts', '/shifts.html', 'decide'],
  ['people', '/people.html', 'administer'],
  ['telling', '/telling.html', 'administer'],
];
const COUNT_EVERY_MS = 2_000;

export function mount(root, { view }) {
  const openCount = el('span', { class: 'count', hidden: true });
  const link = el('span', { class: 'link-state', role: 'status' });
  const clock = el('time', { class: 'clock' });
  const pages = PAGES.filter(([, , needed]) => may(needed));
  const links = pages.map(([name, href]) =>
    el('a', { href, 'aria-current': name === view ? 'page' : null }, t(name), name === 'alarms' ? openCount : null),
  );
  root.replaceChildren(wordMark(), el('nav', { 'aria-label': t('pages') }, ...[...links, setUp(view)].filter(Boolean)), el('div', { class: 'frame-end' }, link, clock, view === 'signin' ? null : save(), display(), whoIsHere()));
  const notice = view === 'signin' ? null : signInNotice(who());
  if (notice) {
    root.after(notice);
  }
  if (!may('read')) {
    return () => {};
  }

  const counted = throttled(() => countAlarms(openCount), COUNT_EVERY_MS);
  const offs = [
    live.on('state', (state) => (showLink(link, state), tick())),
    live.on('alarm', counted.ask),
    live.on('reload', counted.ask),
  ];
  const tick = () => showTime(clock);
  const ticking = setInterval(tick, 1000);
  showLink(link, 'waiting');
  counted.ask();
  return () => {
    clearInterval(ticking);
    counted.stop();
    offs.forEach((off) => off());
  };
}

function setUp(view) {
  const own = SET_UP.filter(([, , needed]) => may(needed));
  if (own.length === 0) {
    return null;
  }
  const links = own.map(([name, href]) =>
    el('li', {}, el('a', { href, 'aria-current': name === view ? 'page' : null }, t(name))));
  const isHere = SET_UP.some(([name]) => name === view);
  return el('details', { class: 'set-up', data: { here: isHere } }, el('summary', {}, t('setUp')), el('ul', { class: 'plain' }, links));
}

/** Three bands whose cut ends stand against a hairline: the film as the board draws it. */
function wordMark() {
  const bands = svg('svg', { viewBox: '0 0 28 24', 'aria-hidden': 'true' },
    svg('rect', { x: 0, y: 2.5, width: 19, height: 6.5 }),
    svg('rect', { x: 0, y: 10.5, width: 12, height: 3 }),
    svg('rect', { x: 0, y: 15, width: 20.5, height: 6.5 }),
    svg('path', { d: 'M24 0V24', class: 'line' }));
  return el('a', { class: 'word-mark', href: '/', 'aria-label': 'Filmward' }, bands, el('span', {}, 'Filmward'));
}

function showTime(clock) {
  if (isSynchronised()) {
    const text = timeWithSeconds(nowMs());
    clock.replaceChildren(text.slice(0, 5), el('span', { class: 'seconds' }, text.slice(5)));
  }
}

const LINK_WORDS = { live: t('live'), waiting: t('connecting') };

function showLink(node, state) {
  const before = node.dataset.state;
  node.dataset.state = state;
  document.documentElement.dataset.connection = state;
  if (before !== state) {
    const words = LINK_WORDS[state] ?? t('lostSince', { time: moment(nowMs()) });
    node.replaceChildren(shape(state === 'lost' ? 'lost' : 'live'), el('span', {}, words));
  }
}

async function countAlarms(node) {
  try {
    const { alarms } = await getJson('/api/v1/alarms', { state: 'open' });
    const waiting = alarms.filter(isWaiting).length;
    node.hidden = alarms.length === 0;
    node.dataset.waiting = waiting > 0;
    setText(node, String(alarms.length));
    node.title = t('openAlarms', { open: alarms.length, waiting });
  } catch {
    node.hidden = true;
  }
}
