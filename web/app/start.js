/** Starts a page: the shared head, then the view that the document names in `data-view`. */
import * as header from './header.js';
import * as live from './live.js';

const VIEWS = {
  board: () => import('./board.js'),
  layer: () => import('./layer.js'),
  limits: () => import('./limits.js'),
  tests: () => import('./tests.js'),
  alarms: () => import('./alarms.js'),
  rolls: () => import('./rolls.js'),
  causes: () => import('./causes.js'),
  telling: () => import('./telling.js'),
  handover: () => import('./handover.js'),
  figures: () => import('./figures.js'),
  shifts: () => import('./shifts.js'),
  intake: () => import('./intake.js'),
  help: () => import('./help.js'),
};

const view = document.documentElement.dataset.view;
const params = new URLSearchParams(location.search);
header.mount(document.getElementById('frame'), { view });
const { mount } = await VIEWS[view]();
mount(document.getElementById('main'), params);
live.connect();
