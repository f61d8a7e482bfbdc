/** How messages go out, when an alarm that nobody takes is escalated, and the form that changes it. */
import { postJson } from './api.js';
import { el } from './elements.js';
import { decision, field, select, text } from './tellingDecision.js';
import { testButton } from './tellingRules.js';
import { escalationSentence, linkSentence, mailSentence, SECURITY } from './tellingWords.js';
import { room } from './text.js';

const t = await room('telling');

export function settingsWords(settings, change) {
  const said = el('p', { class: 'said', role: 'status' });
  const to = text('test-email', '', { type: 'email', maxlength: 254 });
  return el('div', { class: 'telling-settings' },
    el('p', {}, mailSentence(settings)),
    settings.mail
      ? el('div', { class: 'test-mail' }, field('test-email', t('tryMail'), to), testButton(() => ({ email: to.value.trim() }), said))
      : null,
    said,
    el('p', {}, linkSentence(settings)),
    el('p', {}, escalationSentence(settings)),
    el('div', { class: 'telling-buttons' },
      el('button', { type: 'button', class: settings.mail ? 'quiet' : null, data: { action: 'change-settings' }, on: { click: change } }, t(settings.mail ? 'changeThis' : 'setUpMail'))));
}

export function settingsForm(settings, done, leave) {
  const mail = settings.mail ?? { host: '', port: 587, security: 'starttls', user: '', from: '' };
  const host = text('mail-host', mail.host, { maxlength: 253, spellcheck: 'false' });
  const port = text('mail-port', mail.port, { type: 'number', min: 1, max: 65535 });
  const security = select('mail-security', SECURITY, mail.security);
  const user = text('mail-user', mail.user, { maxlength: 253, spellcheck: 'false' });
  const password = text('mail-password', '', { type: 'password', maxlength: 500, autocomplete: 'new-password', placeholder: { set: t('keptSecret'), environment: t('fromEnvironment'), none: '' }[settings.password] });
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
    done(t('soFromNow'));
  };
  const deciding = decision('settings', t('keepThis'), keep, leave);
  const [high, medium, low, again] = times.map(([, input]) => input);
  return el('form', { class: 'telling-form', novalidate: true, on: { submit: deciding.submit } },
    el('h3', { tabindex: -1 }, t('changeWhy')),
    el('fieldset', {}, el('legend', {}, t('mailServer')), el('div', { class: 'fields' },
      field('mail-host', t('name'), host, t('noMailHelp')), field('mail-security', t('encryption'), security), field('mail-port', t('port'), port),
      field('mail-from', t('comeFrom'), from), field('mail-user', t('user'), user, t('userHelp')),
      field('mail-password', t('password'), password, t('passwordHelp')))),
    el('div', { class: 'fields' }, field('public-address', t('reach'), address, t('reachHelp'))),
    el('fieldset', {}, el('legend', {}, t('escalatedAfter')), el('div', { class: 'fields' },
      field('high-minutes', t('high'), high), field('medium-minutes', t('medium'), medium),
      field('low-minutes', t('low'), low, t('never')), field('again-minutes', t('againAfter'), again, t('onceOnly')))),
    deciding.node);
}
