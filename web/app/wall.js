/**
 * The board on a wall: no controls, as many lines as fit (seven at most), the others in turn every twenty seconds with a row of dots. The screen is
 * kept awake where the browser can do that, and the picture wanders by a few pixels so that nothing burns in. Escape or a tap ends it.
 *
 * Type grows with the height of the screen: digits of means are 2.9 % of it, which is 20 mm on a wall screen 680 mm high (55 inches).
 */
import { el } from './elements.js';
import { room } from './text.js';

const t = await room('board');
const MOST_LINES = 7;
const TURN_MS = 20_000;
const WANDER_MS = 60_000;
const PLACES = [[0, 0], [3, 1], [4, 4], [1, 5], [-3, 3], [-4, -1], [-2, -4], [2, -3]];
const RANK = { act: 0, stale: 1, gauge: 2, watch: 3 };

/** `lines` holds the bands of the board. Gives {arrange(board), stop}. */
export function wall(lines) {
  const root = document.documentElement;
  root.dataset.wall = 'true';
  const dots = el('div', { class: 'wall-dots', 'aria-hidden': 'true' });
  const asleep = el('p', { class: 'wall-asleep', role: 'status', hidden: true }, t('mayfallAsleep'));
  document.body.append(dots, asleep);
  let page = 0;
  let place = 0;
  let order = [];
  let lock = null;

  /** The lines that need somebody come first. */
  function arrange(board) {
    order = [...board.lines.keys()].sort((a, b) => (RANK[board.lines[a].state] ?? 4) - (RANK[board.lines[b].state] ?? 4) || a - b);
    turn(0);
  }

  function turn(by) {
    const bands = [...lines.children];
    bands.forEach((band) => (band.hidden = false));
    const height = Math.max(1, ...bands.map((band) => band.offsetHeight));
    const columns = getComputedStyle(lines).gridTemplateColumns.split(' ').length;
    const room = innerHeight - lines.getBoundingClientRect().top - dots.offsetHeight;
    const each = Math.max(1, Math.min(MOST_LINES, columns * Math.max(1, Math.floor(room / height))));
    const pages = Math.max(1, Math.ceil(bands.length / each));
    page = (page + by) % pages;
    const shown = new Set(order.slice(page * each, (page + 1) * each));
    bands.forEach((band, i) => {
      band.hidden = !shown.has(i);
      band.style.order = order.indexOf(i);
    });
    dots.hidden = pages === 1;
    dots.replaceChildren(...Array.from({ length: pages }, (_, i) => el('span', { data: { here: i === page } })));
  }

  function wander() {
    place = (place + 1) % PLACES.length;
    const [x, y] = PLACES[place];
    document.getElementById('main').style.transform = `translate(${x}px, ${y}px)`;
  }

  async function stayAwake() {
    try {
      lock = document.visibilityState === 'visible' ? await navigator.wakeLock.request('screen') : lock;
      asleep.hidden = true;
    } catch {
      asleep.hidden = false;
    }
  }

  const end = () => location.replace('/');
  const key = (event) => event.key === 'Escape' && end();
  const turning = setInterval(() => turn(1), TURN_MS);
  const wandering = setInterval(wander, WANDER_MS);
  document.addEventListener('visibilitychange', stayAwake);
  document.addEventListener('keydown', key);
  document.addEventListener('click', end);
  addEventListener('resize', () => turn(0));
  stayAwake();
  return {
    arrange,
    stop: () => {
      clearInterval(turning);
      clearInterval(wandering);
      lock?.release();
      [dots, asleep].forEach((node) => node.remove());
      delete root.dataset.wall;
      document.removeEventListener('visibilitychange', stayAwake);
      document.removeEventListener('keydown', key);
      document.removeEventListener('click', end);
    },
  };
}
