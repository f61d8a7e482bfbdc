/** Who handed over and who took over: what was signed, by whom, and the button for the next of the two. */
import { el } from './elements.js';
import { allow, whyNot } from './person.js';
import { datedOf } from './plantClock.js';

const SIDES = [['outgoing', 'Handed over', 'gives', 'Hand over'], ['incoming', 'Taken over', 'takes', 'Take over']];
const DIGEST_SHOWN = 16;

/** `sign(side, meaning)` is called by the button; `mayHandOver` where what is shown can be signed by the outgoing lead. */
export function handoverSign(page, { sign, mayHandOver }) {
  const signatures = page.signed?.signatures ?? [];
  const done = (side) => signatures.find((one) => one.side === side);
  const next = mayHandOver ? 'outgoing' : done('outgoing') && !done('incoming') ? 'incoming' : null;
  const boxes = SIDES.map(([side, words, key, verb]) => {
    const signature = mayHandOver ? null : done(side);
    return el('div', { class: 'signed-side', data: { side } },
      el('h3', {}, signature ? words : verb),
      el('p', {}, el('q', {}, signature?.meaning ?? page[key])),
      signature ? el('p', { class: 'signed-by' }, el('strong', {}, signature.by), `, ${datedOf(signature.at)}`)
        : side === next ? allow(el('button', { type: 'button', class: 'decide', data: { action: side }, on: { click: () => sign(side, page[key]) } }, `${verb}: sign`), 'tend-alarms') : null,
      side === next ? whyNot('tend-alarms') : null,
      signature ? null : el('p', { class: 'on-paper' }, 'Name and time:'));
  });
  const digest = page.signed && !mayHandOver ? page.signed.digest : null;
  return el('section', { class: 'signatures', 'aria-label': 'Signatures' }, el('h2', {}, 'Both leads sign'),
    el('p', { class: 'soft face' }, 'Read it together, face to face. What is not understood is asked before anybody signs.'), el('div', { class: 'signature-pair' }, boxes),
    digest ? el('p', { class: 'soft digest' }, 'Both sign what stands here, known by its SHA-256 ', el('code', { class: 'short', title: digest }, `${digest.slice(0, DIGEST_SHOWN)}\u2026`), el('code', { class: 'whole' }, digest), '. It is kept as it was signed.') : null);
}
