/** The places of the limits page, and the few things that happen to them. */
import { el, setText } from './elements.js';
import { testsOf } from './limitsOverview.js';
import { troubleLine } from './trouble.js';
import { room } from './text.js';

const t = await room('limits');

export function limitsParts(root, address) {
  const place = el('p', { class: 'soft' }, el('a', { href: '/' }, address.line));
  const trouble = troubleLine();
  const said = el('p', { class: 'limits-said', role: 'status', tabindex: -1 });
  const inForce = el('div', {});
  const table = el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('proposedLimits') });
  const doubts = el('ul', { class: 'warnings' });
  const past = el('div', {});
  const look = el('h3', { tabindex: -1 }, t('lookAt'));
  const came = el('button', { type: 'button', class: 'quiet newer', hidden: true, data: { action: 'take-newer' } });
  const proposal = el('div', { class: 'proposal-place' });
  const looking = el('div', {});
  const against = section(t('oldAgainstNew'));
  const body = el('div', { hidden: true });

  function fill({ choice, points, deciding, moving }) {
    looking.append(look, points.node);
    against.append(past);
    proposal.append(table, el('div', { class: 'doubts' },
      looking,
      el('div', {}, el('h3', {}, t('speaksAgainst')), doubts)));
    body.append(
      section(t('inForce'), inForce),
      section(t('newBaseline'), el('p', {}, t('nothingChanges')), choice.node, came, proposal),
      against,
      section(t('theDecision'), deciding.node));
    root.replaceChildren(el('div', { class: 'limits-head' }, el('h1', {}, t('title')), place), said, trouble.node, body, moving.dialog);
  }

  function head({ line, structure }) {
    document.title = t('titleOf', { line });
    body.hidden = false;
    const tests = el('a', { href: testsOf(line, structure.code), data: { action: 'tests' } }, t('whichTests'));
    place.replaceChildren(...t.nodes('place', { line: el('a', { href: '/' }, line), structure: structure.code, name: structure.name, tests }));
  }

  /** Too few samples give no limits, so there is nothing to compare and no sample to look at; the reasons stay. */
  function isThere(given) {
    const made = given?.characteristics.some(({ proposed }) => proposed) ?? false;
    proposal.hidden = !given;
    [table, looking].forEach((node) => (node.hidden = !made));
    against.hidden = !made;
  }

  function say(words) {
    setText(said, words);
    said.focus();
    said.scrollIntoView({ block: 'center' });
  }

  const newer = (n) => {
    came.hidden = n === 0;
    setText(came, t('newerCame', { n }));
  };
  return {
    fill, head, say, newer, trouble, inForce, table, doubts, past, look,
    busy: (isBusy) => [proposal, past].forEach((node) => node.setAttribute('aria-busy', String(isBusy))),
    isThere,
    takeNewer: (ask) => came.addEventListener('click', ask),
  };
}

function section(title, ...body) {
  return el('section', { class: 'limits-part' }, el('h2', {}, title), body);
}
