/**
 * The film's section with its echoes: bands to scale (thin ones raised and broken), beside them the echo of each
 * boundary as a stroke, to the right where it has the sign of the pulse and to the left where it is turned over, as long
 * as it is strong in dB. Layers that cannot be resolved are barred and say so; fitted ones have a dotted edge.
 */
import { el, svg } from './elements.js';
import { echoWords } from './filmCheckWords.js';
import { bandHeights } from './filmScale.js';
import { length, number } from './format.js';
import { hatchings, hatchOf } from './hatch.js';
import { room } from './text.js';

const t = await room('film-check');
const LEAST_REM = 3.4;
const LEAST_NARROW_REM = 4.6;
const NARROW_PX = 560;
const WEAKEST_DB = 50;
const MARGIN = 8;

export function filmSection() {
  const drawing = svg('svg', { class: 'film check-film', 'aria-hidden': 'true' });
  const echoes = el('ol', { class: 'plain check-echoes', 'aria-label': t('echoesFirst') });
  const layers = el('ol', { class: 'plain check-layers', 'aria-label': t('layersFirst') });
  const caption = el('figcaption', { class: 'soft' }, t('caption'));
  const stage = el('div', { class: 'check-stage' }, drawing, echoes, layers);
  const node = el('figure', { class: 'check-section' }, stage, caption);
  let plan = null;

  function show(next) {
    plan = next;
    draw();
  }

  function draw() {
    const { width } = drawing.getBoundingClientRect();
    if (plan === null || width === 0) {
      return;
    }
    const rem = parseFloat(getComputedStyle(document.documentElement).fontSize);
    const slices = slicesOf(plan);
    const least = rem * (stage.clientWidth < NARROW_PX ? LEAST_NARROW_REM : LEAST_REM);
    const height = Math.max(least * slices.length, Math.min(36 * rem, slices.length * 5 * rem));
    const bands = bandHeights(slices.map(({ um: thickness }) => thickness), height, least);
    stage.style.height = `${height + 2 * MARGIN + rem}px`;
    drawing.setAttribute('height', height + 2 * MARGIN);
    drawing.replaceChildren(...picture(plan, slices, bands, width));
    echoes.replaceChildren(...plan.echoes.map((echo) => at(echoLine(echo, arrival(plan, echo)), edgeOf(bands, echo.after))));
    layers.replaceChildren(...plan.layers.map((layer, i) => at(layerLine(layer), middleOf(slices, bands, i))));
  }
  return { node, show, draw };
}

/** One for each layer of the structure, with the reported layer that it belongs to. */
function slicesOf({ layers }) {
  return layers.flatMap(({ members, resolution, nominalUm }, reported) =>
    members.map(({ role, nominalUm: own }) => ({ role, reported, resolution, um: own ?? (nominalUm ?? members.length) / members.length })));
}

function edgeOf(bands, after) {
  const last = bands.at(-1);
  return MARGIN + (after < bands.length ? bands[after].top : last.top + last.height);
}

function middleOf(slices, bands, reported) {
  const own = bands.filter((band, i) => slices[i].reported === reported);
  return MARGIN + (own[0].top + own.at(-1).top + own.at(-1).height) / 2;
}

function at(node, y) {
  node.style.top = `${y}px`;
  return node;
}

function picture(plan, slices, bands, width) {
  const filmPx = Math.round(width * 0.56);
  const centre = filmPx + (width - filmPx) * 0.5;
  const reach = (width - filmPx) * 0.5 - 4;
  const foot = edgeOf(bands, bands.length);
  return [
    hatchings('check'), bars(),
    ...slices.map((slice, i) => bandOf(slice, bands[i], filmPx)),
    ...plan.layers.map((layer, i) => outline(layer, slices, bands, i, filmPx)),
    svg('path', { class: 'echo-line', d: `M${centre} ${MARGIN - 6}V${foot + 6}` }),
    ...plan.echoes.map((echo) => stroke(echo, edgeOf(bands, echo.after), { filmPx, centre, reach })),
  ];
}

function bars() {
  return svg('defs', {}, svg('pattern', { id: 'check-barred', width: 16, height: 16, patternUnits: 'userSpaceOnUse' },
    svg('path', { class: 'barred', d: 'M-4 4 4 -4M-4 20 20 -4M12 20 20 12' })));
}

function bandOf({ role, resolution }, { top, height, broken }, filmPx) {
  const box = { x: 1, y: MARGIN + top, width: filmPx - 2, height };
  const middle = MARGIN + top + height / 2;
  const slant = (y) => `M-2 ${y + 3} 8 ${y - 3}`;
  return svg('g', {},
    svg('rect', { ...box, class: 'ply' }),
    svg('rect', { ...box, fill: hatchOf('check', role) }),
    resolution === 'cannot be resolved' ? svg('rect', { ...box, fill: 'url(#check-barred)' }) : null,
    broken ? [svg('path', { class: 'break-gap', d: slant(middle) }), svg('path', { class: 'break', d: `${slant(middle - 2.5)}${slant(middle + 2.5)}` })] : null);
}

function outline({ resolution }, slices, bands, reported, filmPx) {
  const own = bands.filter((band, i) => slices[i].reported === reported);
  const top = MARGIN + own[0].top;
  return svg('rect', { class: 'outline', data: { resolution: resolution ?? 'not known' }, x: 1, y: top, width: filmPx - 2, height: MARGIN + own.at(-1).top + own.at(-1).height - top });
}

function stroke({ place, polarity, strengthDb, decibels }, y, { filmPx, centre, reach }) {
  const db = strengthDb ?? decibels;
  const length = db === null ? 0 : Math.max(2, reach * Math.max(0, 1 + db / WEAKEST_DB));
  const end = polarity === '-' ? centre - length : centre + length;
  return svg('g', {},
    place === 'within' ? svg('path', { class: 'unseen', d: `M1 ${y}H${filmPx - 1}` }) : null,
    svg('path', { class: 'echo-stroke', data: { place }, d: `M${centre} ${y}H${end}` }));
}

/** When it comes after the front, ns; null where a time before it is not known. */
function arrival({ layers }, { after, place }) {
  if (place === 'front') {
    return null;
  }
  const members = layers.flatMap((layer) => layer.members).slice(0, after);
  const times = members.map(({ nominalUm, velocityMps }) => (nominalUm !== null && velocityMps !== null ? (2000 * nominalUm) / velocityMps : null));
  return times.includes(null) ? null : times.reduce((sum, ns) => sum + ns, 0);
}

function echoLine(echo, ns) {
  const { sign, size, word } = echoWords(echo);
  return el('li', { data: { sight: echo.sight, place: echo.place } },
    el('span', { class: 'for-readers' }, t('echoFrom', echo)),
    el('b', { class: 'sign' }, sign), ' ', size, ' ', el('span', { class: 'echo-word' }, word),
    ns === null ? null : el('span', { class: 'soft arrival' }, t('atNs', { ns: `${number(ns, 1)}\u202fns` })));
}

function layerLine({ name, nominalUm, flightNs, resolution }) {
  return el('li', { data: { resolution: resolution ?? 'not known' } },
    el('b', {}, name), ' ', nominalUm === null ? t('noTarget') : length(nominalUm),
    el('span', { class: 'flight' }, flightNs === null ? '' : [`${number(flightNs, 1)}\u202fns`, el('span', { class: 'there-and-back' }, t('thereAndBack'))], flightNs === null ? '' : ', ', el('span', { class: 'resolution' }, resolution === null ? t('timeUnknown') : t(`resolution.${resolution}`))));
}
