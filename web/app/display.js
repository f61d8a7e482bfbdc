/** In the head of a page: language, unit of length, decimal sign, light or dark, as this screen shows them. */
import { choose, chosen, language, LANGUAGES, UNITS, unitOf } from './choices.js';
import { el } from './elements.js';
import { room } from './text.js';

const t = await room('display');

export function display() {
  const languages = Object.entries(LANGUAGES).map(([code, { name }]) => [code, name]);
  const units = Object.entries(UNITS).map(([code, { sign }]) => [code, sign]);
  const dialog = el('dialog', { class: 'sheet display', 'aria-labelledby': 'display-title' },
    el('h2', { id: 'display-title' }, t('title')),
    el('p', { class: 'soft' }, t('where')),
    choice('language', language(), languages),
    choice('unit', Object.keys(UNITS).find((code) => UNITS[code] === unitOf()), units),
    choice('decimal', chosen('decimal') ?? '', [['', t('decimalOfLanguage')], ['point', '12.5'], ['comma', '12,5']]),
    choice('light', chosen('light') ?? '', [['', t('lightOfDevice')], ['light', t('light')], ['dark', t('dark')]]),
    el('form', { method: 'dialog' }, el('button', { class: 'quiet' }, t('close'))));
  const button = el('button', { type: 'button', class: 'quiet display-open', 'aria-haspopup': 'dialog', title: t('title'), on: { click: () => dialog.showModal() } },
    el('span', { 'aria-hidden': 'true' }, `${language().toUpperCase()} ${unitOf().sign}`), el('span', { class: 'for-readers' }, t('title')));
  return el('div', { class: 'display-choice' }, button, dialog);
}

function choice(name, now, options) {
  return el('fieldset', { class: 'display-row' }, el('legend', {}, t(`of.${name}`)),
    el('div', { class: 'segments' }, options.map(([value, words]) =>
      el('label', {}, el('input', { type: 'radio', name: `display-${name}`, value, checked: value === now, on: { change: () => choose(name, value === '' ? null : value) } }), el('span', {}, words)))));
}
