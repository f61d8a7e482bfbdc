/** Who handed over and who took over: what was signed, by whom, and the button for the next of the two. */
import { el } from './elements.js';
import { allow, whyNot } from './person.js';
import { datedOf } from './plantClock.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('handover');
const say = await sayings('alarms');

const SIDES = [['outgoing', 'gives'], ['incoming', 'takes']];
const DIGEST_SHOWN = 16;

/** `sign(side, meaning)` is called by the button; `mayHandOver` where what is shown can be signed by the outgoing lead. */
export function handoverSign(page, { sign, mayHandOver }) {
  const signatures = page.signed?.signatures ?? [];
  const done = (side) => signatures.find((one) => one.side === side);
  const next = mayHandOver ? 'outgoing' : done('outgoing') && !done('incoming') ? 'incoming' : null;
  const boxes = SIDES.map(([side, key]) => {
    const verb = t(`side.${side}.verb`);
    const signature = mayHandOver ? null : done(side);
    return el('div', { class: 'signed-side', data: { side } },
      el('h3', {}, signature ? t(`side.${side}.done`) : verb),
      el('p', {}, el('q', {}, say(signature?.meaning ?? page[key]))),
      signature ? el('p', { class: 'signed-by' }, el('strong', {}, signature.by), `, ${datedOf(signature.at)}`)
        : side === next ? allow(el('button', { type: 'button', class: 'decide', data: { action: side }, on: { click: () => sign(side, page[key]) } }, t('verbSign', { verb })), 'tend-alarms') : null,
      side === next ? whyNot('tend-alarms') : null,
      signature ? null : el('p', { class: 'on-paper' }, t('nameAndTime')));
  });
  const digest = page.signed && !mayHandOver ? page.signed.digest : null;
  return el('section', { class: 'signatures', 'aria-label': t('signatures') }, el('h2', {}, t('bothSign')),
    el('p', { class: 'soft face' }, t('readTogether')), el('div', { class: 'signature-pair' }, boxes),
    digest ? el('p', { class: 'soft digest' }, t.nodes('bothSignThis', { short: el('code', { class: 'short', title: digest }, `${digest.slice(0, DIGEST_SHOWN)}\u2026`), whole: el('code', { class: 'whole' }, digest) })) : null);
}
