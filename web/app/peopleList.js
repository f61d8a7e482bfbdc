/** Accounts: add somebody, give another role, a new password, disable. What is taken away is gone at once. */
import { getJson, postJson } from './api.js';
import { twice } from './twice.js';
import { el, setText } from './elements.js';
import { inWords } from './person.js';

const STANDINGS = { active: 'active', 'one-time': 'has not chosen a password yet', disabled: 'disabled' };

/** `tell(words, secret)` shows a one-time password. */
export function peoplePart(tell, trouble) {
  const list = el('ul', { class: 'plain people-list' });
  const said = el('p', { class: 'said', role: 'status' });
  const name = el('input', { id: 'person-add', maxlength: 80, autocomplete: 'off', required: true });
  const role = el('select', { id: 'person-role' });
  const form = el('form', { class: 'people-form', novalidate: true, data: { action: 'add-person' }, on: { submit } },
    el('div', {}, el('label', { for: 'person-add' }, 'Name, as it stands with what the person does'), name),
    el('div', {}, el('label', { for: 'person-role' }, 'Role'), role),
    el('button', { type: 'submit' }, 'Add'), said);
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
      trouble.show(error, 'This list is not fresh.');
    }
  }

  async function act(path, body, done) {
    try {
      done(await postJson(path, body));
      await refresh();
    } catch (error) {
      setText(said, `Not done: ${error.sentence ?? error.message}`);
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
    tell(`${whose} signs in with this one-time password within 7 days, and then chooses another:`, oneTimePassword);
  }

  function rowOf(person) {
    const path = `/api/v1/people/${person.id}`;
    const isDisabled = person.standing === 'disabled';
    return el('li', { data: { person: person.name, standing: person.standing } },
      el('div', {}, el('strong', {}, person.name), el('span', { class: 'soft' }, `${STANDINGS[person.standing]}${person.secondFactor ? ', with a second factor' : ''}`)),
      roleChoice(person, (chosen) => act(`${path}/role`, { role: chosen }, () => setText(said, `${person.name} is ${inWords(chosen)} now, and signs in again.`))),
      el('div', { class: 'people-ways' },
        twice(isDisabled ? 'Let in again' : 'New password', `A new password for ${person.name}`, () => act(`${path}/password`, {}, invited)),
        person.secondFactor ? twice('Take second factor away', `Take the second factor of ${person.name} away`, () => act(`${path}/second-factor/off`, {}, () => setText(said, `${person.name} signs in without a code now.`))) : null,
        isDisabled ? null : twice('Disable', `Disable ${person.name}`, () => act(`${path}/disable`, {}, () => setText(said, `${person.name} is disabled and signed out everywhere.`)))));
  }

  function roleChoice(person, chosen) {
    const give = el('button', { type: 'button', class: 'quiet', hidden: true, on: { click: () => chosen(select.value) } }, 'Give');
    const select = el('select', { 'aria-label': `Role of ${person.name}`, on: { change: () => (give.hidden = select.value === person.role) } }, options(roles, person.role));
    return el('div', { class: 'people-role' }, select, give);
  }

  refresh();
  return el('section', { class: 'people-part', 'aria-label': 'People' },
    el('p', { class: 'soft' }, 'Viewers look. Shift leads also take alarms and bring files. Engineers also decide about limits, tests and structures. Quality also says what becomes of rolls, and takes the audit out. Administrators do all of it and keep these lists.'),
    list, el('h2', {}, 'Add a person'), form);
}

function options(roles, selected) {
  return roles.map((role) => el('option', { value: role, selected: role === selected }, inWords(role)));
}
