/** Tokens of gauges and other machines: what each may do, until when. A token is shown once. */
import { getJson, postJson } from './api.js';
import { el, setText } from './elements.js';
import { nowMs } from './plantClock.js';
import { twice } from './twice.js';

const SCOPES = [['send-files', 'send files of readings'], ['tell-line-state', 'say what a line is doing'], ['read', 'read charts and alarms']];
const HALF_A_YEAR_MS = 182 * 24 * 3600 * 1000;

/** `tell(words, secret)` shows a new token. */
export function tokensPart(tell, trouble) {
  const list = el('ul', { class: 'plain people-list' });
  const said = el('p', { class: 'said', role: 'status' });
  const name = el('input', { id: 'token-name', maxlength: 80, autocomplete: 'off', required: true });
  const lastDay = el('input', { id: 'token-day', type: 'date', required: true, value: new Date(Date.now() + HALF_A_YEAR_MS).toISOString().slice(0, 10) });
  const boxes = SCOPES.map(([value, words], i) => el('span', { class: 'shown' }, el('input', { type: 'checkbox', id: `scope-${value}`, name: 'scope', value, checked: i === 0 }), el('label', { for: `scope-${value}` }, words)));
  const form = el('form', { class: 'people-form', novalidate: true, data: { action: 'add-token' }, on: { submit } },
    el('div', {}, el('label', { for: 'token-name' }, 'Name of the machine'), name),
    el('div', {}, el('label', { for: 'token-day' }, 'Last day'), lastDay),
    el('fieldset', {}, el('legend', {}, 'It may'), el('div', { class: 'people-scope' }, boxes)),
    el('button', { type: 'submit' }, 'Make a token'), said);

  async function refresh() {
    try {
      const { tokens } = await getJson('/api/v1/tokens');
      list.replaceChildren(...tokens.map(rowOf));
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
    const scope = [...form.querySelectorAll('input[name="scope"]:checked')].map((box) => box.value);
    act('/api/v1/tokens', { name: name.value, scope, lastDay: lastDay.value }, (token) => {
      setText(said, '');
      tell(`${token.name} sends this token with every request, as Authorization: Bearer ...`, token.secret);
      name.value = '';
    });
  }

  function rowOf(token) {
    const hasEnded = token.revokedAt !== null || Date.parse(token.endsAt) <= nowMs();
    const until = token.revokedAt !== null ? `revoked on ${token.revokedAt.slice(0, 10)}` : `${hasEnded ? 'ended after' : 'until the end of'} ${token.lastDay}`;
    return el('li', { data: { token: token.name, ended: hasEnded } },
      el('div', {}, el('strong', {}, token.name), el('span', { class: 'soft' }, `${until}; made by ${token.addedBy}`)),
      el('span', {}, token.scope.map((word) => SCOPES.find(([value]) => value === word)?.[1] ?? word).join(', ')),
      el('div', { class: 'people-ways' }, hasEnded ? null : twice('Revoke', `Revoke ${token.name}`, () => act(`/api/v1/tokens/${token.id}/revoke`, {}, () => setText(said, `${token.name} is revoked.`)))));
  }

  refresh();
  return el('section', { class: 'people-part', 'aria-label': 'Tokens' },
    el('h2', {}, 'Tokens of machines'),
    el('p', { class: 'soft' }, 'A gauge that sends its files over the network shows a token instead of a name and a password. One for each machine, for no more than it needs.'),
    list, el('h2', {}, 'Make a token'), form);
}
