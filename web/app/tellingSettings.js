/** How messages go out, when an alarm that nobody takes is escalated, and the form that changes it. */
import { postJson } from './api.js';
import { el } from './elements.js';
import { decision, field, select, text } from './tellingDecision.js';
import { testButton } from './tellingRules.js';
import { escalationSentence, linkSentence, mailSentence, SECURITY } from './tellingWords.js';

export function settingsWords(settings, change) {
  const said = el('p', { class: 'said', role: 'status' });
  const to = text('test-email', '', { type: 'email', maxlength: 254 });
  return el('div', { class: 'telling-settings' },
    el('p', {}, mailSentence(settings)),
    settings.mail
      ? el('div', { class: 'test-mail' }, field('test-email', 'Try it: an e-mail address', to), testButton(() => ({ email: to.value.trim() }), said))
      : null,
    said,
    el('p', {}, linkSentence(settings)),
    el('p', {}, escalationSentence(settings)),
    el('div', { class: 'telling-buttons' },
      el('button', { type: 'button', class: settings.mail ? 'quiet' : null, data: { action: 'change-settings' }, on: { click: change } }, settings.mail ? 'Change this' : 'Set up the mail server')));
}

export function settingsForm(settings, done, leave) {
  const mail = settings.mail ?? { host: '', port: 587, security: 'starttls', user: '', from: '' };
  const host = text('mail-host', mail.host, { maxlength: 253, spellcheck: 'false' });
  const port = text('mail-port', mail.port, { type: 'number', min: 1, max: 65535 });
  const security = select('mail-security', SECURITY, mail.security);
  const user = text('mail-user', mail.user, { maxlength: 253, spellcheck: 'false' });
  const password = text('mail-password', '', { type: 'password', maxlength: 500, autocomplete: 'new-password', placeholder: { set: 'kept; write another one to change it', environment: 'comes from the environment', none: '' }[settings.password] });
  const from = text('mail-from', mail.from, { type: 'email', maxlength: 254 });
  const address = text('public-address', settings.publicAddress, { maxlength: 2000, spellcheck: 'false', placeholder: 'https://filmward.plant.example' });
  const times = ['high', 'medium', 'low', 'again'].map((name) => [`${name}Minutes`, text(`${name}-minutes`, settings.escalation[`${name}Minutes`], { type: 'number', min: 1, max: 10080 })]);
  const ports = { starttls: '587', tls: '465', none: '25' };
  security.addEventListener('change', () => Object.values(ports).includes(port.value) && (port.value = ports[security.value]));

  const body = () => ({
    mail: host.value.trim() === '' ? null : { host: host.value.trim(), port: Number(port.value), security: security.value, user: user.value.trim(), from: from.value.trim() },
    publicAddress: address.value.trim() || null,
    escalation: Object.fromEntries(times.map(([name, input]) => [name, input.value === '' ? null : Number(input.value)])),
    ...(password.value ? { password: password.value } : {}),
  });
  const keep = async (decided) => {
    await postJson('/api/v1/telling/settings', { ...body(), ...decided });
    done('Messages go out so from now on.');
  };
  const deciding = decision('settings', 'Keep this', keep, leave);
  const [high, medium, low, again] = times.map(([, input]) => input);
  return el('form', { class: 'telling-form', novalidate: true, on: { submit: deciding.submit } },
    el('h3', { tabindex: -1 }, 'Change this, and say why'),
    el('fieldset', {}, el('legend', {}, 'Mail server'), el('div', { class: 'fields' },
      field('mail-host', 'Name', host, 'Empty: no e-mail'), field('mail-security', 'Encryption', security), field('mail-port', 'Port', port),
      field('mail-from', 'Messages come from', from), field('mail-user', 'User', user, 'Empty where it asks for none'),
      field('mail-password', 'Password', password, 'It cannot be read again. Another server, port, encryption or user asks for it anew.'))),
    el('div', { class: 'fields' }, field('public-address', 'Where people reach these pages', address, 'For the link in each message; empty for none')),
    el('fieldset', {}, el('legend', {}, 'Escalated where nobody takes it, after so many minutes'), el('div', { class: 'fields' },
      field('high-minutes', 'High priority', high), field('medium-minutes', 'Medium priority', medium),
      field('low-minutes', 'Low priority', low, 'Empty: never'), field('again-minutes', 'Again after', again, 'Empty: once only'))),
    deciding.node);
}
