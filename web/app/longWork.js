/**
 * Something that may take long, at its place on a page. After a moment it says what is done, how far it is and for how long, and
 * can be cancelled; what is cancelled ends at the server too. A place waits for one thing: what it waited for before is cancelled.
 *
 *     const proposal = await longWork(place, t('reading'), (one) => getJson('/api/v1/reports/week', query, one));
 */
import { waiting } from './waiting.js';
import { workLine } from './workLine.js';

const QUIET_MS = 700;
const ASKED_MS = 500;
const underWay = new WeakMap();

/** `place` holds nothing else while this goes on, and nothing afterwards. Throws as `ask` does. */
export async function longWork(place, words, ask) {
  underWay.get(place)?.cancel();
  const one = waiting();
  const line = workLine(() => one.cancel().finally(draw));
  const draw = () => line.draw(one, words);
  const shown = setTimeout(() => (draw(), place.replaceChildren(line.node)), QUIET_MS);
  const asked = setInterval(() => one.look().finally(draw), ASKED_MS);
  const leave = () => one.isLook && one.cancel();
  underWay.set(place, one);
  addEventListener('pagehide', leave);
  try {
    return await ask(one);
  } finally {
    clearTimeout(shown);
    clearInterval(asked);
    removeEventListener('pagehide', leave);
    line.node.remove();
    if (underWay.get(place) === one) {
      underWay.delete(place);
    }
  }
}
