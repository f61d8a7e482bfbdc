/** The head of every page: word mark, ways to the pages, whether data flow, the plant's clock, who is here. */
import { isWaiting } from './alarmWords.js';
import { getJson } from './api.js';
import { el, setText, svg } from './elements.js';
import { shape } from './marks.js';
import * as live from './live.js';
import { askWho, forget, people, PEOPLE_CHANGED } from './person.js';
import { isSynchronised, moment, nowMs, timeWithSeconds } from './plantClock.js';
import { throttled } from './refresh.js';

const PAGES = [
  ['board', '/', 'Board'],
  ['alarms', '/alarms.html', 'Alarms'],
  ['handover', '/handover.html', 'Handover'],
  ['intake', '/intake.html', 'Intake'],
  ['help', '/help.html', 'Help'],
];
/** For whoever sets the plant up; folded, since it is seldom needed. */
const SET_UP = [['telling', '/telling.html', 'Telling people']];
const COUNT_EVERY_MS = 2_000;

export function mount(root, { view }) {
  const openCount = el('span', { class: 'count', hidden: true });
  const link = el('span', { class: 'link-state', role: 'status' });
  const clock = el('time', { class: 'clock' });
  const links = PAGES.map(([name, href, word]) =>
    el('a', { href, 'aria-current': name === view ? 'page' : null }, word, name === 'alarms' ? openCount : null),
  );
  root.replaceChildren(wordMark(), el('nav', { 'aria-label': 'Pages' }, links, setUp(view)), el('div', { class: 'frame-end' }, link, clock, whoAmI()));

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
  const links = SET_UP.map(([name, href, word]) =>
    el('li', {}, el('a', { href, 'aria-current': name === view ? 'page' : null }, word)));
  const isHere = SET_UP.some(([name]) => name === view);
  return el('details', { class: 'set-up', data: { here: isHere } }, el('summary', {}, 'Set-up'), el('ul', { class: 'plain' }, links));
}

/** Three bands whose cut ends stand against a hairline: the film as the board draws it. */
function wordMark() {
  const bands = svg('svg', { viewBox: '0 0 28 24', 'aria-hidden': 'true' },
    svg('rect', { x: 0, y: 2.5, width: 19, height: 6.5 }),
    svg('rect', { x: 0, y: 10.5, width: 12, height: 3 }),
    svg('rect', { x: 0, y: 15, width: 20.5, height: 6.5 }),
    svg('path', { d: 'M24 0V24', class: 'line' }));
  return el('a', { class: 'word-mark', href: '/' }, bands, el('span', {}, 'Filmward'));
}

function showTime(clock) {
  if (isSynchronised()) {
    const text = timeWithSeconds(nowMs());
    clock.replaceChildren(text.slice(0, 5), el('span', { class: 'seconds' }, text.slice(5)));
  }
}

const LINK_WORDS = { live: 'live', waiting: 'connecting' };

function showLink(node, state) {
  const before = node.dataset.state;
  node.dataset.state = state;
  document.documentElement.dataset.connection = state;
  if (before !== state) {
    const words = LINK_WORDS[state] ?? `no connection since ${moment(nowMs())}`;
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
    node.title = `${alarms.length} open, ${waiting} that nobody has taken`;
  } catch {
    node.hidden = true;
  }
}

function whoAmI() {
  const label = el('span', {});
  const dialog = el('dialog', { class: 'sheet', 'aria-label': 'Who is at this screen' });
  const name = () => setText(label, people()[0] ?? 'Who is here?');
  const show = () => {
    const known = people().map((person) =>
      el('li', {}, el('span', {}, person),
        el('button', { type: 'button', class: 'quiet', on: { click: () => (forget(person), show()) } }, 'Forget')));
    dialog.replaceChildren(
      el('h2', {}, 'Who is at this screen?'),
      askWho('Tap the name that acts from here', 'This is me', () => dialog.close()),
      known.length > 0 ? el('details', {}, el('summary', {}, 'Names kept in this browser'), el('ul', { class: 'plain known' }, known)) : null,
      el('form', { method: 'dialog' }, el('button', { class: 'quiet' }, 'Close')),
    );
    if (!dialog.open) {
      dialog.showModal();
    }
  };
  dialog.addEventListener('close', () => dialog.replaceChildren());
  name();
  document.addEventListener(PEOPLE_CHANGED, name);
  return [el('button', { type: 'button', class: 'who-am-i', 'aria-haspopup': 'dialog', on: { click: show } }, label), dialog];
}
