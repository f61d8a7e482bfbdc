/** Accounts: add somebody, give another role, a new password, disable. What is taken away is gone at once. */
import { getJson, postJson } from './api.js';
import { twice } from './twice.js';
import { el, setText } from './elements.js';
import { inWords } from './person.js';
import { room } from './text.js';

const t = await room('people');


/** `tell(words, secret)` shows a one-time password. */
export function peoplePart(tell, trouble) {
  const list = el('ul', { class: 'plain people-list' });
  const said = el('p', { class: 'said', role: 'status' });
  const name = el('input', { id: 'person-add', maxlength: 80, autocomplete: 'off', required: true });
  const role = el('select', { id: 'person-role' });
  const form = el('form', { class: 'people-form', novalidate: true, data: { action: 'add-person' }, on: { submit } },
    el('div', {}, el('label', { for: 'person-add' }, t('nameLabel')), name),
    el('div', {}, el('label', { for: 'person-role' }, t('role')), role),
    el('button', { type: 'submit' }, t('add')), said);
  let roles = [];

  async function refresh() {
    try {
      const answer = await getJson('/api/v1/people');
      if (roles.length === 0) {
        role.replaceChildren(...options(answer.roles, 'viewer'));
      }
      roles = answer.roles;
      list.replaceChildren(...answer.people.map(rowOf));
      trouble.clear();
    } catch (error) {
      trouble.show(error, t('notFresh'));
    }
  }

  async function act(path, body, done) {
    try {
      done(await postJson(path, body));
      await refresh();
    } catch (error) {
      setText(said, t('notDone', { why: error.sentence ?? error.message }));
    }
  }

  function submit(event) {
    event.preventDefault();
    act('/api/v1/people', { name: name.value, role: role.value }, (person) => {
      invited(person);
      name.value = '';
    });
  }

  function invited({ name: whose, oneTimePassword }) {
    setText(said, '');
    tell(t('invited', { name: whose }), oneTimePassword);
  }

  function rowOf(person) {
    const path = `/api/v1/people/${person.id}`;
    const isDisabled = person.standing === 'disabled';
    return el('li', { data: { person: person.name, standing: person.standing } },
      el('div', {}, el('strong', {}, person.name), el('span', { class: 'soft' }, standingOf(person))),
      roleChoice(person, (chosen) => act(`${path}/role`, { role: chosen }, () => setText(said, t('roleNow', { name: person.name, role: inWords(chosen) })))),
      el('div', { class: 'people-ways' },
        twice(t(isDisabled ? 'letIn' : 'newPassword'), t('newPasswordFor', person), () => act(`${path}/password`, {}, invited)),
        person.secondFactor ? twice(t('factorAway'), t('factorAwayOf', person), () => act(`${path}/second-factor/off`, {}, () => setText(said, t('noCode', person)))) : null,
        isDisabled ? null : twice(t('disable'), t('disableWho', person), () => act(`${path}/disable`, {}, () => setText(said, t('isDisabled', person))))));
  }

  function roleChoice(person, chosen) {
    const give = el('button', { type: 'button', class: 'quiet', hidden: true, on: { click: () => chosen(select.value) } }, t('give'));
    const select = el('select', { 'aria-label': t('roleOf', person), on: { change: () => (give.hidden = select.value === person.role) } }, options(roles, person.role));
    return el('div', { class: 'people-role' }, select, give);
  }

  refresh();
  return el('section', { class: 'people-part', 'aria-label': t('title') },
    el('p', { class: 'soft' }, t('roles')),
    list, el('h2', {}, t('addPerson')), form);
}

function standingOf({ standing, secondFactor }) {
  const words = t(`standing.${standing}`);
  return secondFactor ? t('withFactor', { standing: words }) : words;
}

function options(roles, selected) {
  return roles.map((role) => el('option', { value: role, selected: role === selected }, inWords(role)));
}
