/** The film before and after a change, two sections side by side, to one scale. */
import { el, svg } from './elements.js';
import { drawFilm } from './film.js';
import { room } from './text.js';

const t = await room('change');

const HEIGHT_PX = 300;

export function changeFilms() {
  const before = side('before');
  const after = side('after');
  const node = el('div', { class: 'change-films', hidden: true }, before.node, after.node);
  let drawn = () => {};

  /** `sides` as the API has them; layers whose move is clear are marked. */
  function show(sides, moves) {
    node.hidden = sides === null;
    if (sides === null) {
      return;
    }
    const layers = sides.rows.filter(({ kind }) => kind === 'layer');
    const moved = new Map(moves.map((move) => [move.position, move]));
    drawn = () => {
      const [was, is] = [layers.map((row) => layerOf(row, 'before')), layers.map((row) => byNow(row, moved.get(row.position)))];
      before.draw(was, is, () => 'calm');
      after.draw(is, was, ({ position }) => (moved.get(position)?.clear ? 'watch' : 'calm'));
    };
    before.say(sides.samplesBefore);
    after.say(sides.samplesAfter);
    drawn();
  }

  function listen() {
    const watch = new ResizeObserver(() => drawn());
    watch.observe(node);
    return () => watch.disconnect();
  }
  return { node, show, listen };
}

function layerOf(row, which) {
  return { ...row, mean: row[which]?.mean ?? null, limits: { centre: row.before?.mean ?? row.after?.mean } };
}

/** Where the layer has come to: after a drift that is not the mean since. */
function byNow(row, move) {
  const layer = layerOf(row, 'after');
  return move && row.before ? { ...layer, mean: row.before.mean * (1 + move.percent / 100) } : layer;
}

function side(which) {
  const film = svg('svg', { class: 'film', 'aria-hidden': 'true', height: HEIGHT_PX });
  const caption = el('figcaption', {});
  const node = el('figure', { class: 'change-film', data: { side: which } }, caption, film);

  function draw(layers, beside, needs) {
    const { width } = film.getBoundingClientRect();
    if (width > 0) {
      drawFilm(film, layers, { width, height: HEIGHT_PX, room: Math.round(width * 0.22), beside }, needs);
    }
  }

  function say(samples) {
    caption.replaceChildren(...t.nodes('samplesOf', { n: samples, side: el('strong', {}, t(which === 'before' ? 'before' : 'byNow')) }));
  }
  return { node, draw, say };
}
