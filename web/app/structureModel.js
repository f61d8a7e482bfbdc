/**
 * A structure as the form holds it, and as a structures file wants it. Pure. Lengths are um; `form` is
 * {code, name, layers: [{name, role, resin, extruder, spec, average, density, velocity, greatest, joined}], total,
 * totalAverage, groups: {[members]: {name, spec, average}}}, where `joined` says that the gauge reports a layer together with
 * the one above, and `groups` holds what a group states itself.
 */
const PARTS = ['target', 'lower', 'upper'];

export const blankLayer = (role = 'core') => ({ name: '', role, resin: '', extruder: '', spec: {}, average: {}, joined: false });

export function blank() {
  return { code: '', name: '', layers: ['skin', 'core', 'seal'].map(blankLayer), total: {}, totalAverage: {}, groups: {} };
}

/** Members by their names, as a key. */
export const keyOf = (names) => JSON.stringify(names);

/** Adds up what every layer gives. */
export function sumOf(specs) {
  return Object.fromEntries(PARTS.filter((part) => specs.every((spec) => isGiven(spec[part])))
    .map((part) => [part, specs.reduce((sum, spec) => sum + spec[part], 0)]));
}

const isGiven = (value) => value !== undefined && value !== null;

/** From a structure as the server gives it. */
export function formOf({ code, name, layers, reported, total, totalAverage }) {
  const ends = new Set();
  const groups = {};
  let at = 0;
  for (const { name: groupName, members, spec, average } of reported) {
    const own = layers.slice(at, at + members.length);
    ends.add(at);
    at += members.length;
    groups[keyOf(members)] = {
      name: groupName === members.join(' + ') ? '' : groupName,
      spec: apart(spec, sumOf(own.map((layer) => layer.spec))),
      average: apart(average, sumOf(own.map((layer) => layer.average))),
    };
  }
  const rows = layers.map((layer, i) => ({ ...layer, resin: layer.resin ?? '', extruder: layer.extruder ?? '', joined: !ends.has(i) }));
  return { code, name, layers: rows, total, totalAverage, groups };
}

function apart(stated, sum) {
  return Object.fromEntries(PARTS.filter((part) => isGiven(stated[part]) && stated[part] !== sum[part]).map((part) => [part, stated[part]]));
}

/** Layers in the groups that the gauge reports, outer first. */
export function groupsOf(layers) {
  const groups = [];
  layers.forEach((layer, i) => (layer.joined && i > 0 ? groups.at(-1).push(layer) : groups.push([layer])));
  return groups;
}

/** The text of a structures file; JSON is YAML too, and the server writes it evenly. */
export function fileOf({ code, name, layers, total, totalAverage, groups }) {
  const reported = groupsOf(layers).map((members) => groupFor(members.map((layer) => layer.name), groups));
  const isPlain = reported.every((group) => Array.isArray(group) && group.length === 1);
  const whole = { ...limitsFor(total), ...averageFor(totalAverage) };
  const structure = {
    code, name: name || code, layers: layers.map(layerFor),
    ...(Object.keys(whole).length > 0 ? { total: whole } : {}),
    ...(isPlain ? {} : { reported }),
  };
  return JSON.stringify({ structures: [structure] }, null, 1);
}

function groupFor(names, groups) {
  const stated = groups[keyOf(names)] ?? { name: '', spec: {}, average: {} };
  const own = { ...(stated.name ? { name: stated.name } : {}), ...limitsFor(stated.spec), ...averageFor(stated.average) };
  return Object.keys(own).length > 0 ? { layers: names, ...own } : names;
}

function layerFor({ name, role, resin, extruder, spec, average, density, velocity, greatest }) {
  const texts = Object.entries({ resin, extruder, density, velocity }).filter(([, value]) => isGiven(value) && value !== '').map(([key, value]) => [key, String(value)]);
  return { name, role, ...limitsFor(spec), ...averageFor(average), ...Object.fromEntries(texts), ...(isGiven(greatest) ? { greatest: lengthFor(greatest) } : {}) };
}

const limitsFor = (spec) => Object.fromEntries(PARTS.filter((part) => isGiven(spec[part])).map((part) => [part, lengthFor(spec[part])]));
const averageFor = (average) => (PARTS.some((part) => isGiven(average[part])) ? { average: limitsFor(average) } : {});
const lengthFor = (um) => `${um} um`;
