/**
 * Whether a gauge can see a film, before anything is measured: the film's section with the echoes to expect, what to
 * look at, and below what a reading would be worth. Every entry is in the address; nothing is stored.
 */
import { getJson } from './api.js';
import { el } from './elements.js';
import { budgetTable } from './filmBudget.js';
import { budgetForm, checkForm } from './filmCheckForm.js';
import { checkFigures } from './filmCheckFigures.js';
import { filmSection } from './filmSection.js';
import { gaugeRoomWays } from './gaugeRoom.js';
import { synchronise } from './plantClock.js';
import { proposalOf, remarksOf, summaryOf } from './filmCheckWords.js';
import { nothingYet } from './nothingYet.js';
import { troubleLine } from './trouble.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('film-check');
const say = await sayings('gauge');
const TYPING_MS = 300;

export function mount(root, params) {
  const trouble = troubleLine();
  const check = checkForm(params, askSoon);
  const worth = budgetForm(params, askSoon);
  const section = filmSection();
  const table = budgetTable(params.get('velocity'), askSoon);
  const summary = el('p', { class: 'check-summary', role: 'status' });
  const remarks = el('div', { class: 'check-remarks' });
  const figures = el('div', {});
  const guidance = el('p', { class: 'soft' });
  const body = el('div', { hidden: true },
    el('div', { class: 'check-body' }, section.node, remarks), figures, guidance,
    el('section', { class: 'check-worth', 'aria-label': t('worth') },
      el('h2', {}, t('worth')),
      el('p', { class: 'soft' }, t('worthLead')),
      worth.node, table.node));
  let timer = null;
  let asking = 0;
  let structure = params.get('structure');

  root.replaceChildren(el('div', { class: 'check-head' }, el('h1', {}, t('title')), gaugeRoomWays('film-check')), check.node, trouble.node, summary, body);

  function askSoon() {
    clearTimeout(timer);
    timer = setTimeout(ask, TYPING_MS);
  }

  /** Only the newest question counts. */
  async function ask() {
    const mine = ++asking;
    try {
      const asked = check.values();
      const { plan, missing } = await planOf(asked);
      if (structure !== null && structure !== plan.structure.code) {
        table.forget();
      }
      structure = plan.structure.code;
      const entries = { ...worth.values(), velocity: table.velocity() };
      const told = await getJson('/api/v1/gauge/uncertainty', { structure, ...entries });
      if (mine === asking) {
        show(plan, told);
        trouble.say(missing);
        keep({ ...asked, structure, ...entries });
      }
    } catch (error) {
      if (mine === asking) {
        trouble.show(error);
      }
    }
    document.documentElement.dataset.ready = 'true';
  }

  function show(plan, told) {
    body.hidden = false;
    check.show(plan);
    summary.replaceChildren(...summaryOf(plan));
    section.show(plan);
    remarks.replaceChildren(...proposalOf(plan), ...remarksOf(plan));
    figures.replaceChildren(checkFigures(plan));
    guidance.textContent = say(plan.guidance);
    table.show(told);
  }

  function keep(entries) {
    const given = Object.entries(entries).filter(([, value]) => value !== null && value !== '');
    history.replaceState(null, '', `?${new URLSearchParams(given)}`);
  }

  async function begin() {
    try {
      const [board, { structures }] = await Promise.all([getJson('/api/v1/board'), getJson('/api/v1/structures')]);
      synchronise(board.now, board.zone);
      if (structures.length === 0) {
        check.node.hidden = true;
        root.append(await nothingYet(t('noFilm')));
        document.documentElement.dataset.ready = 'true';
        return;
      }
      worth.show(board.lines);
    } catch (error) {
      trouble.show(error);
    }
    await ask();
  }

  const redraw = new ResizeObserver(section.draw);
  redraw.observe(section.node);
  begin();
  return () => (redraw.disconnect(), clearTimeout(timer));
}

/** Where the film that the address names is not known, the first one that is, and words about it. */
async function planOf(asked) {
  try {
    return { plan: await getJson('/api/v1/gauge/check', asked), missing: '' };
  } catch (error) {
    if (error.status !== 404 || !asked.structure) {
      throw error;
    }
    const plan = await getJson('/api/v1/gauge/check', { ...asked, structure: null });
    return { plan, missing: t('firstKnown', { what: error.message }) };
  }
}
