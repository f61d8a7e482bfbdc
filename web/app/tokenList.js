/** Tokens of gauges and other machines: what each may do, until when. A token is shown once. */
import { getJson, postJson } from './api.js';
import { el, setText } from './elements.js';
import { nowMs } from './plantClock.js';
import { twice } from './twice.js';
import { room } from './text.js';

const t = await room('people');
const SCOPES = ['send-files', 'tell-line-state', 'read'];
const HALF_A_YEAR_MS = 182 * 24 * 3600 * 1000;

/** `tell(words, secret)` shows a new token. */
export function tokensPart(tell, trouble) {
  const list = el('ul', { class: 'plain people-list' });
  const said = el('p', { class: 'said', role: 'status' });
  const name = el('input', { id: 'token-name', maxlength: 80, autocomplete: 'off', required: true });
  const lastDay = el('input', { id: 'token-day', type: 'date', required: true, value: new Date(Date.now() + HALF_A_YEAR_MS).toISOString().slice(0, 10) });
  const boxes = SCOPES.map((value, i) => el('span', { class: 'shown' }, el('input', { type: 'checkbox', id: `scope-${value}`, name: 'scope', value, checked: i === 0 }), el('label', { for: `scope-${value}` }, t(`scope.${value}`))));
  const form = el('form', { class: 'people-form', novalidate: true, data: { action: 'add-token' }, on: { submit } },
    el('div', {}, el('label', { for: 'token-name' }, t('machine')), name),
    el('div', {}, el('label', { for: 'token-day' }, t('lastDay')), lastDay),
    el('fieldset', {}, el('legend', {}, t('itMay')), el('div', { class: 'people-scope' }, boxes)),
    el('button', { type: 'submit' }, t('makeToken')), said);

  async function refresh() {
    try {
      const { tokens } = await getJson('/api/v1/tokens');
      list.replaceChildren(...tokens.map(rowOf));
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
    const scope = [...form.querySelectorAll('input[name="scope"]:checked')].map((box) => box.value);
    act('/api/v1/tokens', { name: name.value, scope, lastDay: lastDay.value }, (token) => {
      setText(said, '');
      tell(t('sendsToken', token), token.secret);
      name.value = '';
    });
  }

  function rowOf(token) {
    const hasEnded = token.revokedAt !== null || Date.parse(token.endsAt) <= nowMs();
    const until = t(token.revokedAt !== null ? 'revokedOn' : hasEnded ? 'endedAfter' : 'untilEnd', { day: token.revokedAt?.slice(0, 10) ?? token.lastDay, by: token.addedBy });
    return el('li', { data: { token: token.name, ended: hasEnded } },
      el('div', {}, el('strong', {}, token.name), el('span', { class: 'soft' }, until)),
      el('span', {}, token.scope.map((word) => t.maybe(`scope.${word}`) ?? word).join(', ')),
      el('div', { class: 'people-ways' }, hasEnded ? null : twice(t('revoke'), t('revokeWhich', token), () => act(`/api/v1/tokens/${token.id}/revoke`, {}, () => setText(said, t('isRevoked', token))))));
  }

  refresh();
  return el('section', { class: 'people-part', 'aria-label': t('tokens') },
    el('h2', {}, t('tokensOf')),
    el('p', { class: 'soft' }, t('tokensLead')),
    list, el('h2', {}, t('makeToken')), form);
}
