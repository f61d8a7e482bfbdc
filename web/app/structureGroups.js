/** What the gauge reports: the groups that follow from the layers, each with a name and limits of its own where it needs them. */
import { el } from './elements.js';
import { limitsOf, textOf } from './structureFields.js';
import { groupsOf, keyOf, sumOf } from './structureModel.js';
import { exact } from './structureNumbers.js';
import { room } from './text.js';

const t = await room('structures');
const LIMITS = { target: t('field.target'), lower: t('field.lower'), upper: t('field.upper') };
const AVERAGES = { lower: t('field.average.lower'), upper: t('field.average.upper') };

/** `stated` is what groups say themselves, by their members. What was typed stays while other layers change. */
export function reportedGroups(stated) {
  const list = el('ol', { class: 'plain structure-groups' });
  const node = el('section', { class: 'structure-reported', hidden: true }, el('h3', {}, t('reported')), el('p', { class: 'soft' }, t('reportedLead')), list);
  const cards = new Map();
  let shown = [];

  function show(layers) {
    shown = groupsOf(layers).map((members) => ({ members, key: keyOf(members.map(({ name }) => name)) }))
      .filter(({ members, key }) => members.length > 1 || says(stated[key]));
    node.hidden = shown.length === 0;
    const wanted = shown.map(({ members, key }) => {
      const card = cards.get(key) ?? cardOf(stated[key]);
      cards.set(key, card);
      card.sums(members);
      return card.node;
    });
    if (wanted.length !== list.children.length || wanted.some((each, i) => each !== list.children[i])) {
      list.replaceChildren(...wanted);
    }
  }
  const read = () => Object.fromEntries(shown.map(({ key }) => [key, cards.get(key).read()]));
  const fields = () => shown.flatMap(({ key }) => cards.get(key).fields);
  return { node, show, read, fields };
}

const says = (group) => Boolean(group) && (group.name !== '' || Object.keys(group.spec).length > 0 || Object.keys(group.average).length > 0);

function cardOf({ name: ownName = '', spec = {}, average = {} } = {}) {
  const title = el('h4', {});
  const name = textOf(t('field.groupName'), ownName, { tag: 'group-name' });
  const limits = limitsOf(LIMITS, spec, 'group-');
  const averages = limitsOf(AVERAGES, average, 'group-average.');
  const node = el('li', { class: 'structure-group' }, title, el('div', { class: 'structure-layer-limits' }, name.node, limits.nodes), el('div', { class: 'structure-layer-limits' }, averages.nodes));

  /** What holds where a field stays empty. */
  function sums(members) {
    const joined = members.map((layer) => layer.name || '…').join(' + ');
    title.textContent = joined;
    name.input.placeholder = joined;
    const sum = sumOf(members.map((layer) => layer.spec));
    const mean = sumOf(members.map((layer) => layer.average));
    Object.entries(limits.by).forEach(([part, { input }]) => { input.placeholder = exact(sum[part]); });
    Object.entries(averages.by).forEach(([part, { input }]) => { input.placeholder = exact(mean[part]); });
  }
  return { node, sums, fields: [name, ...limits.all, ...averages.all], read: () => ({ name: name.read() ?? '', spec: limits.read(), average: averages.read() }) };
}
