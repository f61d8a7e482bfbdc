/**
 * The calibration page of the gauge room: gauges and their lines, a calibration in steps, readings that were given
 * another velocity, check standards, and how velocities went in time.
 */
import { getJson } from './api.js';
import { el } from './elements.js';
import { gaugeCalibrate } from './gaugeCalibrate.js';
import { gaugeChecks } from './gaugeChecks.js';
import { gaugeHistory } from './gaugeHistory.js';
import { gaugeLines } from './gaugeLines.js';
import { goToPlace } from './gaugePlaces.js';
import { gaugeScalings } from './gaugeScalings.js';
import { gaugeRoomWays } from './gaugeRoom.js';
import * as live from './live.js';
import { synchronise } from './plantClock.js';
import { throttled } from './refresh.js';
import { troubleLine } from './trouble.js';
import { room } from './text.js';

const t = await room('gauge');
const LEAST_BETWEEN_MS = 2_000;

export function mount(root) {
  document.title = t('tab');
  const trouble = troubleLine();
  const lines = gaugeLines(changed);
  const calibrate = gaugeCalibrate(changed);
  const scalings = gaugeScalings(changed);
  const checks = gaugeChecks(changed);
  const history = gaugeHistory();
  const body = el('div', { hidden: true }, lines.node, calibrate.node, scalings.node, checks.node, history.node);
  root.replaceChildren(
    el('div', { class: 'gauge-head' }, el('h1', {}, t('title')), gaugeRoomWays('calibration')),
    el('p', { class: 'gauge-lead' }, t('lead')),
    trouble.node, body);

  async function refresh() {
    try {
      const [board, gauges, calibrations, standards] = await Promise.all([
        getJson('/api/v1/board'), getJson('/api/v1/gauges'), getJson('/api/v1/calibrations'), getJson('/api/v1/check-standards'),
      ]);
      synchronise(board.now, board.zone);
      const told = { ...gauges, ...calibrations, ...standards };
      [lines, calibrate, scalings, checks, history].forEach((one) => one.show(told));
      const isFirst = body.hidden;
      body.hidden = false;
      if (isFirst) {
        goToPlace();
      }
      trouble.clear();
    } catch (error) {
      trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }

  function changed() {
    return refresh();
  }

  const refreshing = throttled(refresh, LEAST_BETWEEN_MS);
  const stops = [live.on('limits', refreshing.ask), live.on('reload', refreshing.ask), refreshing.stop];
  refreshing.ask();
  return () => stops.forEach((stop) => stop());
}
