/**
 * How a file with headings of its own is read: its first rows beside what they give, the questions that only a person can
 * answer, what each column means. Resolves to true once a mapping is kept, to false where the person leaves it.
 */
import { ApiError, postCsv } from './api.js';
import { el, setText } from './elements.js';
import { may, whyNot } from './person.js';
import { questions } from './mappingQuestions.js';
import { asItStands, asItIsRead } from './mappingTables.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('intake');
const say = await sayings('intake');
const LOOKED_AT = 262_144;

export function propose(file, answers = {}) {
  const query = new URLSearchParams({ name: file.name, answers: JSON.stringify(answers) });
  return postCsv(`/api/v1/mappings/proposal?${query}`, file.slice(0, LOOKED_AT));
}

export function mappingFor(file, first, place) {
  return new Promise((resolve) => wizard(file, first, place, resolve));
}

function wizard(file, first, place, resolve) {
  const answers = {};
  const title = el('h2', { tabindex: -1 }, t('howRead', { name: file.name }));
  const said = el('p', { class: 'mapping-said', role: 'status' });
  const body = el('div', { class: 'mapping-body' });
  const name = el('input', { id: 'mapping-name', type: 'text', maxlength: 80, value: file.name.replace(/\.[^.]*$/, '') });
  const keep = el('button', { type: 'button', data: { action: 'keep-mapping' }, on: { click: keepIt } }, t('keepMapping'));
  const leave = el('button', { type: 'button', class: 'quiet', on: { click: () => end(false) } }, t('leaveFile'));
  const node = el('section', { class: 'mapping', data: { mapping: file.name } }, title,
    el('p', { class: 'soft' }, t('ownHeadings')),
    said, body,
    el('div', { class: 'mapping-end' }, el('label', { for: 'mapping-name' }, t('mappingName')), name, keep, leave, whyNot('decide')));
  let proposal = first;

  function draw() {
    const open = proposal.questions.length;
    keep.disabled = open > 0 || !may('decide');
    setText(said, open === 0 ? t('allKnown') : t('questionsOpen', { n: open }));
    body.replaceChildren(
      ...questions(proposal, answer),
      el('div', { class: 'mapping-sides' }, asItStands(proposal, answer), asItIsRead(proposal)),
      details(t('whySo'), el('ul', {}, proposal.reasons.map((reason) => el('li', {}, say(reason))))),
      details(t('asFile'), el('pre', { class: 'verbatim', tabindex: 0 }, proposal.yaml)));
  }

  async function answer(key, value) {
    const before = answers[key];
    answers[key] = value;
    try {
      proposal = await propose(file, answers);
      draw();
      body.querySelector(`[data-answers="${CSS.escape(key)}"]`)?.focus();
    } catch (error) {
      answers[key] = before;
      if (before === undefined) {
        delete answers[key];
      }
      draw();
      setText(said, sentence(error));
    }
  }

  async function keepIt() {
    keep.disabled = true;
    try {
      const { yaml } = await propose(file, { ...answers, name: name.value.trim() || 'mapping' });
      await postCsv('/api/v1/mappings', yaml);
      end(true);
    } catch (error) {
      keep.disabled = false;
      setText(said, sentence(error));
    }
  }

  function end(kept) {
    node.remove();
    resolve(kept);
  }

  place.append(node);
  draw();
  title.focus();
}

function details(title, ...content) {
  return el('details', {}, el('summary', {}, title), content);
}

function sentence(error) {
  return error instanceof ApiError ? error.sentence : error.message;
}
