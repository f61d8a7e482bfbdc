/** The form that describes a film: code and name, layers from the outer face inwards, the total; the film is drawn beside it as it is typed. */
import { el, setText } from './elements.js';
import { may } from './person.js';
import { structureDrawing } from './structureDrawing.js';
import { limitsOf, textOf } from './structureFields.js';
import { reportedGroups } from './structureGroups.js';
import { layerRows } from './structureLayers.js';
import { fileOf, groupsOf } from './structureModel.js';
import { room } from './text.js';

const t = await room('structures');
const LIMITS = { target: t('field.target'), lower: t('field.lower'), upper: t('field.upper') };
const AVERAGES = { lower: t('field.average.lower'), upper: t('field.average.upper') };

/**
 * `form` is as in `structureModel.js`; `isNew` lets the code be typed. `look(name, text)` is given the file that it makes,
 * `touched()` is told when something is typed after that, `leave()` when nobody wants it.
 */
export function structureForm(form, isNew, { look, touched, leave }) {
  const code = textOf(t('field.code'), form.code, { needed: t('needsCode'), tag: 'code', maxlength: 60 });
  code.input.readOnly = !isNew;
  const name = textOf(t('field.filmName'), form.name, { tag: 'film-name' });
  const drawing = structureDrawing();
  const rows = layerRows(form.layers, changed);
  const groups = reportedGroups(form.groups);
  const total = limitsOf(LIMITS, form.total, 'total-');
  const averages = limitsOf(AVERAGES, form.totalAverage, 'total-average.');
  const said = el('p', { class: 'said', role: 'status' });
  const node = el('form', { class: 'structure-form', novalidate: true, on: { submit, input: changed } },
    el('div', { class: 'structure-fields' },
      el('div', { class: 'structure-film' }, code.node, name.node),
      isNew ? el('p', { class: 'soft' }, t('codeLead')) : null,
      el('h3', {}, t('layers')), el('p', { class: 'soft' }, t('layersLead')), rows.node, groups.node,
      el('h3', {}, t('total')), el('p', { class: 'soft' }, t('totalLead')),
      el('div', { class: 'structure-layer-limits' }, total.nodes), el('div', { class: 'structure-layer-limits' }, averages.nodes),
      el('div', { class: 'structure-ends' },
        el('button', { type: 'submit', data: { action: 'look' }, disabled: !may('decide') }, t('seeChanges')),
        leave ? el('button', { type: 'button', class: 'quiet', data: { action: 'leave' }, on: { click: leave } }, t('leaveForm')) : null),
      said),
    el('aside', { class: 'structure-aside', 'aria-label': t('drawing') }, drawing.node));

  function changed(event) {
    draw();
    setText(said, '');
    if (event) {
      touched();
    }
  }

  /** What is typed so far; nothing that is wrong is drawn. */
  function draw() {
    const layers = rows.typed();
    groups.show(layers);
    drawing.show({ layers, total: {} });
  }

  const allFields = () => [code, name, ...rows.fields(), ...groups.fields(), ...total.all, ...averages.all];

  function read() {
    const layers = rows.read();
    const made = { code: code.read() ?? '', name: name.read() ?? '', layers, groups: groups.read(), total: total.read(), totalAverage: averages.read() };
    doubles(layers);
    return made;
  }

  /** A file calls reported layers by their names, so these must differ; a number alone would be taken for a place. */
  function doubles(layers) {
    const seen = new Map();
    let at = 0;
    groupsOf(layers).forEach((members, i) => {
      const joined = members.map((layer) => layer.name).join(' + ');
      const field = rows.nameField(at);
      at += members.length;
      if (seen.has(joined) && joined !== '') {
        field.complain(t('twice', { name: joined, position: seen.get(joined) }));
      } else if (/^\d{1,6}$/.test(joined) && Number(joined) !== i + 1) {
        field.complain(t('takenForPlace', { name: joined }));
      }
      seen.set(joined, i + 1);
    });
  }

  function submit(event) {
    event.preventDefault();
    const made = read();
    const wrong = allFields().filter((field) => field.isWrong());
    if (wrong.length > 0) {
      setText(said, t('toCorrect', { n: wrong.length }));
      const hidden = wrong[0].input.closest('details');
      if (hidden) {
        hidden.open = true;
      }
      return wrong[0].input.focus();
    }
    setText(said, '');
    look(`${made.code}.yaml`, fileOf(made));
  }

  return { node, draw, focus: () => (isNew ? code.input : rows.nameField(0).input).focus() };
}
