/**
 * What pages say, in the language of the person. Texts stand in `web/text/LANGUAGE/ROOM.json`, one object of keys a room; each
 * module takes its room once:
 *
 *     const t = await room('alarms');
 *     t('takenBy', { name })          "takenBy": "Taken by {name}"
 *     t('open', { n: 3 })             "open": { "one": "one alarm", "other": "{n} alarms" }, after the language's plurals
 *     t.nodes('signIn', { link })     strings and nodes in the order of the sentence, for a link or strong words within it
 *     t.maybe(code)                   undefined where no such key is there, for codes of the server that may be new
 *
 * `{n}` is written as a count and `{unit}` is the unit of length that was chosen, without being given. Numbers and times go in
 * as text (`format.js`, `plantClock.js`). Both languages have the same keys and placeholders, each key that a module asks for is
 * there (`TextsTest`), and no module says anything by itself (`WordsInModulesTest`). A key that is missing all the same is shown in
 * brackets; where a room cannot be read, `textFile.js` says so on the page.
 */
import { language, unitOf } from './choices.js';
import { count } from './format.js';
import { textFile } from './textFile.js';

const PLACE = /\{(\w+)\}/;
const plurals = new Intl.PluralRules(language());
const rooms = new Map();

/** The texts of a room; read once. */
export function room(name) {
  if (!rooms.has(name)) {
    rooms.set(name, read(name));
  }
  return rooms.get(name);
}

async function read(name) {
  return speaker(await textFile(`/text/${language()}/${name}.json`), name);
}

function speaker(texts, name) {
  const say = (key, params = {}) => pieces(texts, key, params, name).join('');
  say.nodes = (key, params = {}) => pieces(texts, key, params, name).filter((piece) => piece !== '');
  say.maybe = (key, params = {}) => (Object.hasOwn(texts, key) ? say(key, params) : undefined);
  return say;
}

function pieces(texts, key, params, name) {
  const found = texts[key];
  if (found === undefined) {
    console.error(`text ${name}.${key} is missing in ${language()}`);
    return [`[${name}.${key}]`];
  }
  const sentence = typeof found === 'string' ? found : found[plurals.select(params.n)] ?? found.other;
  return sentence.split(PLACE).map((piece, i) => (i % 2 === 0 ? piece : value(piece, params)));
}

function value(place, params) {
  if (place === 'n' && typeof params.n === 'number') {
    return count(params.n);
  }
  return params[place] ?? (place === 'unit' ? unitOf().sign : `{${place}}`);
}
