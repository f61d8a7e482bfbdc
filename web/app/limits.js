/**
 * The page of the limits of one film on one line: what is in force, a new baseline beside it, old against
 * new, and the decision. Nothing on it changes limits but the buttons that ask for name and reason.
 */
import { getJson, postJson } from './api.js';
import { baselineChoice } from './limitsBaseline.js';
import { decision } from './limitsDecision.js';
import { inForce, versionsOf } from './limitsInForce.js';
import { moveDialog } from './limitsMove.js';
import { oldAgainstNew } from './limitsPast.js';
import { limitsParts } from './limitsParts.js';
import { pointsToLookAt } from './limitsPoints.js';
import { doubtsList, proposalTable } from './limitsTable.js';
import { limitsOverview } from './limitsOverview.js';
import * as live from './live.js';
import { may } from './person.js';
import { synchronise } from './plantClock.js';
import { throttled } from './refresh.js';
import { room } from './text.js';

const t = await room('limits');

const LEAST_BETWEEN_MS = 1_000;
const TYPING_MS = 250;

export function mount(root, params) {
  const address = { line: params.get('line'), structure: params.get('structure') };
  return address.line && address.structure ? mountOne(root, address) : limitsOverview(root);
}

function mountOne(root, address) {
  const page = limitsParts(root, address);
  const choice = baselineChoice(() => stored, () => propose(TYPING_MS));
  const points = pointsToLookAt(leave, takeBack);
  const deciding = decision(() => shown?.body ?? null, decided);
  const moving = moveDialog(address, decided);
  let stored = { takenAt: [], size: 1 };
  let alarms = [];
  let excluded = [];
  let versions = null;
  let shown = null;
  let newer = 0;
  let asking = 0;
  let timer = null;

  page.fill({ choice, points, deciding, moving });

  async function refresh() {
    try {
      const [board, all, series, { limits }] = await Promise.all([
        getJson('/api/v1/board'),
        getJson('/api/v1/alarms', { state: 'all' }),
        getJson('/api/v1/series', { ...address, kind: 'layer', position: 1 }),
        getJson(`/api/v1/lines/${encodeURIComponent(address.line)}/limits`, { structure: address.structure }),
      ]);
      synchronise(board.now, board.zone);
      stored = { takenAt: series.columns.takenAt, size: usualSize(series.columns.size) };
      alarms = all.alarms.filter(({ line, structure }) => line === address.line && structure === address.structure);
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
    if (!may('decide')) {
      page.trouble.say(t('onlyDeciders'));
      return showProposal(null);
    }
    keepWithin(choice.span());
    page.busy(true);
    try {
      const body = chosen && { ...address, ...chosen, excluded: excluded.map(({ roll, sample, cause }) => ({ roll, sample, cause })) };
      const proposal = body && (await postJson('/api/v1/limits/proposal', body));
      if (mine === asking) {
        shown = body && { body, proposal };
        page.trouble.clear();
        showProposal(proposal);
      }
    } catch (error) {
      if (mine === asking) {
        page.trouble.show(error, t('noProposal'));
        showProposal(null);
      }
    }
  }

  function showProposal(proposal) {
    page.busy(false);
    page.isThere(proposal);
    deciding.show({ proposal, isFirst: versions.length === 0 });
    page.newer(choice.isOpenEnded() ? newer : 0);
    if (proposal) {
      page.table.replaceChildren(proposalTable(proposal, stored.size, versions[0]?.state === 'retired' ? 'before' : 'now'));
      page.doubts.replaceChildren(...doubtsList(proposal, alarmsWithin(choice.span())));
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

  /** Alarms whose film was still unusual somewhere in a span. */
  function alarmsWithin({ fromMs, toMs }) {
    return alarms.filter(({ openedAt, returnedAt }) => Date.parse(openedAt) <= toMs && !(Date.parse(returnedAt) < fromMs));
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
    page.newer(choice.isOpenEnded() ? newer : 0);
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

/** The count of readings that most samples have. */
function usualSize(sizes) {
  const counts = new Map();
  sizes.filter((size) => size > 0).forEach((size) => counts.set(size, (counts.get(size) ?? 0) + 1));
  return [...counts].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0]?.[0] ?? 1;
}
