/**
 * Sentences that the server composes, in the language, the unit and with the decimal sign of the person. The server says them
 * in English; `web/text/LANGUAGE/said/ROOM.json` holds the forms it uses and how another language says them:
 *
 *     "{list}: thinner than usual": "{list}: dünner als sonst"
 *
 *     const say = await sayings('alarms');
 *     say(alarm.title)
 *
 * A place stands for any words. What stands in it is said again by its own form: `{list…}`, `{items…}` (between semicolons) and
 * `{sentences…}` part by part; `{n}` is a number alone, and `{name…}` is what a plant called something and stays as it is. Lengths and
 * numbers are written anew. The form with most words of its own is taken. What no form knows stays in English, as what people
 * wrote does, and so does everything where a room cannot be read. Forms say µm after a number, as `say` is given it.
 */
import { decimalSign, language } from './choices.js';
import { length, list, oneOf } from './format.js';
import { textFile } from './textFile.js';

const PLACE = /\{(\w+)\}/;
const MICROMETRES = /((?:\d|blank)[ \u202f\u00a0])um(?![\w/])/g;
const LENGTH = /(?<![\w.,])([-+\u2212]?)(\d+(?:\.(\d+))?)[ \u202f\u00a0]µm(?![\w/])/g;
const NUMBER = /(?<![\w.,:-])(\d+)\.(\d+)(?![\w.:])/g;
const COUNT = '([-+\u2212]?[\\d.]+)';
const SPLITS = { list: /, | \/ | and | or /, items: '; ', sentences: /(?<=[.?!]) (?=\p{Lu})/u };
const JOINS = { items: '; ', sentences: ' ' };
const MOST_KEPT = 2000;
const rooms = new Map();

/** Says what the server said, by the forms of these rooms. */
export async function sayings(...names) {
  const read = await Promise.all(names.map(room));
  const exact = new Map(read.flatMap((one) => one.exact));
  const forms = read.flatMap((one) => one.forms).sort((a, b) => b.own - a.own);
  const kept = new Map();
  return (text) => {
    if (typeof text !== 'string' || text === '') {
      return text;
    }
    if (!kept.has(text)) {
      if (kept.size > MOST_KEPT) {
        kept.clear();
      }
      const lines = text.replace(MICROMETRES, '$1µm').split('\n');
      kept.set(text, figures(lines.map((line) => (line === '' ? '' : say(line, exact, forms))).join('\n')));
    }
    return kept.get(text);
  };
}

function room(name) {
  if (!rooms.has(name)) {
    rooms.set(name, language() === 'en' ? Promise.resolve({ exact: [], forms: [] }) : read(name));
  }
  return rooms.get(name);
}

async function read(name) {
  const entries = Object.entries(await textFile(`/text/${language()}/said/${name}.json`).catch(() => ({})));
  return {
    exact: entries.filter(([form]) => !PLACE.test(form)),
    forms: entries.filter(([form]) => PLACE.test(form)).map(([form, other]) => recogniser(form, other)),
  };
}

function recogniser(form, other) {
  const pieces = form.split(PLACE);
  const own = pieces.filter((_, i) => i % 2 === 0);
  const pattern = pieces.map((piece, i) => (i % 2 === 0 ? escaped(piece) : piece === 'n' ? COUNT : '(.+?)')).join('');
  return {
    start: own[0],
    own: own.join('').length,
    places: pieces.filter((_, i) => i % 2 === 1),
    pattern: new RegExp(`^${pattern}$`, 's'),
    other: other.split(PLACE),
  };
}

const escaped = (words) => words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

function say(text, exact, forms) {
  const small = text[0].toLowerCase() + text.slice(1);
  const asLarge = (found) => (found === undefined || small === text ? found : found[0].toUpperCase() + found.slice(1));
  return exact.get(text) ?? asLarge(exact.get(small)) ?? formed(text, exact, forms) ?? asLarge(formed(small, exact, forms)) ?? text;
}

function formed(text, exact, forms) {
  for (const form of forms) {
    const match = text.startsWith(form.start) ? form.pattern.exec(text) : null;
    if (match) {
      return filled(form, match, exact, forms);
    }
  }
  return undefined;
}

function filled(form, match, exact, forms) {
  const values = Object.fromEntries(form.places.map((place, i) => [place, inPlace(place, match[i + 1], exact, forms)]));
  return form.other.map((piece, i) => (i % 2 === 0 ? piece : values[piece] ?? `{${piece}}`)).join('');
}

function inPlace(place, text, exact, forms) {
  const kind = Object.keys(SPLITS).find((one) => place.startsWith(one));
  if (place.startsWith('name')) {
    return text;
  }
  if (kind === undefined || exact.has(text)) {
    return say(text, exact, forms);
  }
  const parts = text.split(SPLITS[kind]).map((part) => say(part, exact, forms));
  return kind === 'list' ? joined(text, parts) : parts.join(JOINS[kind]);
}

/** As the server joined them, in the words of the language. */
function joined(text, parts) {
  return / or /.test(text) ? oneOf(parts) : / and /.test(text) ? list(parts) : parts.join(text.includes(' / ') ? ' / ' : ', ');
}

/** Lengths in the unit and numbers with the decimal sign that were chosen. */
function figures(text) {
  const inUnit = text.replace(LENGTH, (_, sign, digits, decimals = '') => sign + length(Number(digits), decimals.length));
  return decimalSign() === '.' ? inUnit : inUnit.replace(NUMBER, `$1${decimalSign()}$2`);
}
