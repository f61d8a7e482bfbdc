/**
 * Whatever a page asks the server for without a place of its own to wait at. What takes longer than a moment is said at the lower
 * edge of the page, with the way out of it. What is only looked at ends at the server when the page is left.
 */
import { el } from './elements.js';
import { room } from './text.js';
import { waiting } from './waiting.js';
import { workLine } from './workLine.js';

const t = await room('frame');
const QUIET_S = 1;
const ASKED_MS = 500;
const underWay = new Set();
const line = workLine(() => late().forEach((one) => one.cancel().finally(draw)));
const node = el('div', { class: 'page-work' }, line.node);
let ticking = null;

/** Throws as `ask` does. */
export async function pageWork(ask) {
  const one = waiting();
  underWay.add(one);
  ticking ??= setInterval(tick, ASKED_MS);
  try {
    return await ask(one);
  } finally {
    underWay.delete(one);
    draw();
  }
}

const late = () => [...underWay].filter((one) => one.seconds() > QUIET_S);

async function tick() {
  await late()[0]?.look();
  draw();
}

/** Of several the first is said; all are cancelled together. */
function draw() {
  const [first] = late();
  if (first) {
    line.draw(first, t(first.isLook ? 'work.look' : 'work.change'));
    (document.querySelector('dialog:modal') ?? document.body).append(node);
  } else {
    node.remove();
  }
  if (underWay.size === 0) {
    clearInterval(ticking);
    ticking = null;
  }
}

addEventListener('pagehide', () => late().filter((one) => one.isLook).forEach((one) => one.cancel()));
