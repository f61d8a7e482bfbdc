/**
 * The page of the limits of one film on one line: what is in force, a new baseline beside it, old against
 * new, and the decision. Nothing on it changes limits but the buttons that ask for name and reason.
 */
import { getJson, postJson } from './api.js';
import { el, setText } from './elements.js';
import { plural } from './format.js';
import { baselineChoice } from './limitsBaseline.js';
import { decision } from './limitsDecision.js';
import { inForce, versionsOf } from './limitsInForce.js';
import { moveDialog } from './limitsMove.js';
import { oldAgainstNew } from './limitsPast.js';
import { pointsToLookAt } from './limitsPoints.js';
import { proposalTable, warningsList } from './limitsTable.js';
import { limitsOverview } from './limitsOverview.js';
import * as live from './live.js';
import { synchronise } from './plantClock.js';
import { throttled } from './refresh.js';
import { troubleLine } from './trouble.js';

const LEAST_BETWEEN_MS = 1_000;
const TYPING_MS = 250;

export function mount(root, params) {
  const address = { line: params.get('line'), structure: params.get('structure') };
  return address.line && address.structure ? mountOne(root, address) : limitsOverview(root);
}

function mountOne(root, address) {
  const page = partsOf(root, address);
  const choice = baselineChoice(() => stored, () => propose(TYPING_MS));
  const points = pointsToLookAt(leave, takeBack);
  const deciding = decision(() => shown?.body ?? null, decided);
  const moving = moveDialog(address, decided);
  let stored = { takenAt: [], size: 1 };
  let excluded = [];
  let versions = null;
  let shown = null;
  let newer = 0;
  let asking = 0;
  let timer = null;

  page.fill({ choice, points, deciding, moving });

  async function refresh() {
    try {
      const [board, series, { limits }] = await Promise.all([
        getJson('/api/board'),
        getJson('/api/series', { ...address, kind: 'layer', position: 1 }),
        getJson(`/api/lines/${encodeURIComponent(address.line)}/limits`, { structure: address.structure }),
      ]);
      synchronise(board.now, board.zone);
      stored = { takenAt: series.columns.takenAt, size: usualSize(series.columns.size) };
      newer = 0;
      showInForce(series, versionsOf(limits));
      await ask();
    } catch (error) {
      page.trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }

  function showInForce(series, now) {
    if (versions === null) {
      choice.choose(now.length > 0 ? 'last' : 'first');
    }
    versions = now;
    choice.show();
    page.head(series);
    page.inForce.replaceChildren(inForce(versions, { state: series.limits.length > 0 ? 'trial' : 'collecting', stored: stored.takenAt.length }, moving.open));
  }

  function propose(afterMs) {
    clearTimeout(timer);
    shown = null;
    asking += 1;
    page.busy(true);
    timer = setTimeout(ask, afterMs);
  }

  /** Only the newest question counts; an answer to an older one is thrown away. */
  async function ask() {
    const mine = ++asking;
    const chosen = choice.body();
    shown = null;
    keepWithin(choice.span());
    page.busy(true);
    try {
      const body = chosen && { ...address, ...chosen, excluded: excluded.map(({ roll, sample, cause }) => ({ roll, sample, cause })) };
      const proposal = body && (await postJson('/api/limits/proposal', body));
      if (mine === asking) {
        shown = body && { body, proposal };
        page.trouble.clear();
        showProposal(proposal);
      }
    } catch (error) {
      if (mine === asking) {
        page.trouble.show(error, 'No proposal.');
        showProposal(null);
      }
    }
  }

  function showProposal(proposal) {
    page.busy(false);
    page.isThere(proposal !== null);
    deciding.show({ proposal, isFirst: versions.length === 0 });
    page.newer(newer, choice.where());
    if (proposal) {
      page.table.replaceChildren(proposalTable(proposal, stored.size));
      const warnings = warningsList(proposal);
      page.warnings.replaceChildren(...(warnings.length > 0 ? warnings : [el('li', {}, 'Nothing speaks against this baseline.')]));
      points.show(proposal, excluded);
      page.past.replaceChildren(oldAgainstNew(proposal, stored.takenAt.length));
    }
  }

  function leave(sample) {
    excluded = [...excluded, sample];
    points.close();
    ask().then(() => page.look.focus());
  }

  function takeBack(sample) {
    excluded = excluded.filter((other) => other !== sample);
    ask().then(() => page.look.focus());
  }

  /** What was left out of another baseline does not go along. */
  function keepWithin(span) {
    const lies = ({ takenAt }) => span && Date.parse(takenAt) >= span.fromMs && Date.parse(takenAt) <= span.toMs + 1;
    excluded = excluded.filter(lies);
  }

  function decided(words) {
    excluded = [];
    page.say(words);
    refreshing.ask();
  }

  function sampleCame() {
    newer += 1;
    page.newer(newer, choice.where());
  }

  const refreshing = throttled(refresh, LEAST_BETWEEN_MS);
  page.takeNewer(refreshing.ask);
  const ours = (event) => event?.line === address.line && (event.structure ?? address.structure) === address.structure;
  const stops = [
    live.on('limits', (event) => ours(event) && refreshing.ask()),
    live.on('sample', (event) => ours(event) && sampleCame()),
    live.on('reload', refreshing.ask),
    refreshing.stop,
    () => clearTimeout(timer),
  ];
  refreshing.ask();
  return () => stops.forEach((stop) => stop());
}

/** The page's places, and the few things that happen to them. */
function partsOf(root, address) {
  const place = el('p', { class: 'soft' }, el('a', { href: '/' }, address.line));
  const trouble = troubleLine();
  const said = el('p', { class: 'limits-said', role: 'status', tabindex: -1 });
  const inForce = el('div', {});
  const table = el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': 'Proposed limits' });
  const warnings = el('ul', { class: 'warnings' });
  const past = el('div', {});
  const look = el('h3', { tabindex: -1 }, 'Samples to look at');
  const came = el('button', { type: 'button', class: 'quiet newer', hidden: true, data: { action: 'take-newer' } });
  const proposal = el('div', { class: 'proposal-place' });
  const body = el('div', { hidden: true });

  function fill({ choice, points, deciding, moving }) {
    proposal.append(table, el('div', { class: 'doubts' },
      el('div', {}, look, points.node),
      el('div', {}, el('h3', {}, 'What speaks against it'), warnings)));
    body.append(
      section('In force', inForce),
      section('A new baseline', el('p', {}, 'Nothing changes while you look. Limits move only by the button at the end.'), choice.node, came, proposal),
      section('Old against new', past),
      section('The decision', deciding.node));
    root.replaceChildren(el('div', { class: 'limits-head' }, el('h1', {}, 'Limits'), place), said, trouble.node, body, moving.dialog);
  }

  function head({ line, structure }) {
    document.title = `Limits, ${line} · Filmward`;
    body.hidden = false;
    place.replaceChildren(el('a', { href: '/' }, line), `, ${structure.code}: ${structure.name}. Of all layers and the total together.`);
  }

  function say(words) {
    setText(said, words);
    said.focus();
    said.scrollIntoView({ block: 'center' });
  }

  const newer = (n, where) => {
    came.hidden = n === 0 || where !== 'last';
    setText(came, `${plural(n, 'newer sample')} came since: take the newest`);
  };
  return {
    fill, head, say, newer, trouble, inForce, table, warnings, past, look,
    busy: (isBusy) => [proposal, past].forEach((node) => node.setAttribute('aria-busy', String(isBusy))),
    isThere: (isThere) => [proposal, past].forEach((node) => (node.hidden = !isThere)),
    takeNewer: (ask) => came.addEventListener('click', ask),
  };
}

function section(title, ...body) {
  return el('section', { class: 'limits-part' }, el('h2', {}, title), body);
}

/** The count of readings that most samples have. */
function usualSize(sizes) {
  const counts = new Map();
  sizes.filter((size) => size > 0).forEach((size) => counts.set(size, (counts.get(size) ?? 0) + 1));
  return [...counts].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0]?.[0] ?? 1;
}
