/**
 * The page of the tests of one film on one line: which are shown, which raise alarms, and what that costs,
 * worked out anew as boxes change. Nothing changes but by the button that asks for name and reason.
 */
import { getJson, postJson } from './api.js';
import { el, setText } from './elements.js';
import { limitsAddress, testsOf } from './limitsOverview.js';
import * as live from './live.js';
import { nothingYet } from './nothingYet.js';
import { may } from './person.js';
import { momentOf, synchronise } from './plantClock.js';
import { testsDecision } from './testsDecision.js';
import { testsDelays } from './testsDelays.js';
import { testsList } from './testsList.js';
import { priceInShort, testsPrice } from './testsPrice.js';
import { bodyOf, isSame, stateOf } from './testsState.js';
import { troubleLine } from './trouble.js';
import { room } from './text.js';

const t = await room('tests');

const TICKING_MS = 200;

export function mount(root, params) {
  const address = { line: params.get('line'), structure: params.get('structure') };
  const trouble = troubleLine();
  const said = el('p', { class: 'limits-said', role: 'status', tabindex: -1, hidden: true });
  const price = el('div', { class: 'price-place', 'aria-live': 'polite' });
  const history = el('div', {});
  const strip = el('p', { class: 'price-strip', 'aria-hidden': 'true', hidden: true });
  const list = testsList(choose);
  const delays = testsDelays(priceSoon);
  const isAsInForce = () => isSame(inForce, chosen) && delays.chosen().length === 0;
  const asked = () => ({ ...address, ...bodyOf(chosen), delays: delays.chosen() });
  const deciding = testsDecision(() => (isAsInForce() ? null : asked()), decided);
  const body = el('div', { class: 'tests-body', hidden: true }, list.node, el('div', { class: 'tests-side' }, price, deciding.node, history));
  let now = null;
  let inForce = [];
  let chosen = [];
  let asking = 0;
  const all = el('div', {});
  let timer = null;

  root.replaceChildren(el('div', { class: 'tests-head' }, el('h1', {}, t('title')), place(address)), said, trouble.node, all, body);
  list.node.append(delays.node, strip);
  if (!may('decide')) {
    list.node.querySelectorAll('.ticks input, .usual button').forEach((box) => (box.disabled = true));
  }

  async function refresh() {
    try {
      const board = await getJson('/api/v1/board');
      synchronise(board.now, board.zone);
      if (!address.line || !address.structure) {
        return overview(board);
      }
      now = await getJson(`/api/v1/lines/${encodeURIComponent(address.line)}/tests`, { structure: address.structure });
      inForce = stateOf(now);
      chosen = inForce;
      trouble.clear();
      body.hidden = false;
      strip.hidden = false;
      list.show(chosen);
      delays.show(now.delays);
      showPrice(now);
      history.replaceChildren(...versions(now.versions));
    } catch (error) {
      trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }

  async function overview({ lines }) {
    const films = lines.map(({ line, structure }) => el('li', {}, el('a', { href: testsOf(line, structure.code) }, t('film', { line, structure: structure.code }))));
    all.replaceChildren(films.length === 0 ? await nothingYet(t('noFilm')) : el('ul', { class: 'plain' }, films));
    document.documentElement.dataset.ready = 'true';
  }

  function choose(next) {
    chosen = next;
    list.show(chosen);
    priceSoon();
  }

  function priceSoon() {
    clearTimeout(timer);
    asking += 1;
    price.setAttribute('aria-busy', 'true');
    timer = setTimeout(ask, TICKING_MS);
  }

  /** Only the newest question counts. */
  async function ask() {
    const mine = ++asking;
    try {
      const answer = await postJson('/api/v1/tests/price', asked());
      if (mine === asking) {
        trouble.clear();
        showPrice(answer);
      }
    } catch (error) {
      if (mine === asking) {
        trouble.show(error, t('noPrice'));
      }
    }
  }

  function showPrice(answer) {
    price.setAttribute('aria-busy', 'false');
    list.price(answer);
    setText(strip, priceInShort(now, answer, isAsInForce()));
    price.replaceChildren(el('h2', {}, t('thePrice')), testsPrice(now, answer, isAsInForce()));
  }

  function decided(words) {
    said.hidden = false;
    setText(said, words);
    said.focus();
    refresh();
  }

  refresh();
  const stops = [live.on('reload', () => isAsInForce() && refresh()), () => clearTimeout(timer)];
  return () => stops.forEach((stop) => stop());
}

function place({ line, structure }) {
  return line && structure
    ? el('p', { class: 'soft' }, t.nodes('place', { line: el('a', { href: '/' }, line), structure, limits: el('a', { href: limitsAddress(line, structure) }, t('itsLimits')) }))
    : null;
}

function versions(all) {
  if (all.length === 0) {
    return [el('h2', {}, t('decided')), el('p', { class: 'soft' }, t('nobodyYet'))];
  }
  const words = ({ version, by, reason, at }) => el('li', {}, t.nodes('versionBy', { version, by, at: momentOf(at), reason: el('q', {}, reason) }));
  const [newest, ...older] = all;
  return [el('h2', {}, t('decided')), el('ol', { class: 'plain' }, words(newest)),
    older.length > 0 ? el('details', {}, el('summary', {}, t('earlier', { n: older.length })), el('ol', { class: 'plain' }, older.map(words))) : ''];
}
