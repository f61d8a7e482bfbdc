/**
 * Starts a page: the shared head, then the view that the document names in `data-view`. Who may not look is asked to
 * sign in first, and comes back.
 */
import * as header from './header.js';
import * as live from './live.js';
import * as person from './person.js';
import { room } from './text.js';

const t = await room('frame');

const VIEWS = {
  board: () => import('./board.js'),
  line: () => import('./line.js'),
  layer: () => import('./layer.js'),
  limits: () => import('./limits.js'),
  tests: () => import('./tests.js'),
  alarms: () => import('./alarms.js'),
  change: () => import('./change.js'),
  signatures: () => import('./signatures.js'),
  rolls: () => import('./rolls.js'),
  screening: () => import('./screening.js'),
  causes: () => import('./causes.js'),
  telling: () => import('./telling.js'),
  handover: () => import('./handover.js'),
  capability: () => import('./capability.js'),
  report: () => import('./report.js'),
  figures: () => import('./figures.js'),
  shifts: () => import('./shifts.js'),
  gauge: () => import('./gauge.js'),
  intake: () => import('./intake.js'),
  structures: () => import('./structures.js'),
  'film-check': () => import('./filmCheck.js'),
  study: () => import('./study.js'),
  help: () => import('./help.js'),
  people: () => import('./people.js'),
  signin: () => import('./signin.js'),
};
const FOR_ANYBODY = ['signin', 'help'];

const view = document.documentElement.dataset.view;
document.title = `${t(`title.${view}`)} · Filmward`;
document.querySelector('.skip').textContent = t('skip');
const params = new URLSearchParams(location.search);
const me = await person.load().catch(() => person.who());
const isWelcome = FOR_ANYBODY.includes(view) || (person.may('read') && !me.mustChange && !me.mustSetUp);

if (isWelcome) {
  header.mount(document.getElementById('frame'), { view: document.documentElement.dataset.room ?? view });
  const { mount } = await VIEWS[view]();
  mount(document.getElementById('main'), params);
  person.watch();
  if (person.may('read')) {
    live.connect();
  }
} else {
  location.replace(person.signInAddress());
}
