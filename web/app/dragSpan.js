/** Marks a span of time on a chart by dragging across it; a tap is none. `chosen({from, to})` is told of it, in ms. */
import { el } from './elements.js';

const LEAST_PX = 8;

export function dragSpan(panel, chosen) {
  const band = el('span', { class: 'drag-span', hidden: true, 'aria-hidden': 'true' });
  panel.node.append(band);
  let start = null;

  const place = (event) => {
    const { left } = panel.node.getBoundingClientRect();
    const area = panel.areaOf();
    const [a, b] = [start, event.clientX].map((x) => Math.max(area.left, Math.min(area.right, x - left))).sort((x, y) => x - y);
    band.hidden = b - a < LEAST_PX;
    band.style.left = `${a}px`;
    band.style.width = `${b - a}px`;
    band.style.top = `${area.top}px`;
    band.style.height = `${area.bottom - area.top}px`;
  };
  const stop = () => {
    start = null;
    band.hidden = true;
  };
  panel.node.addEventListener('pointerdown', (event) => {
    if (event.button === 0 && !event.target.closest('a, button')) {
      start = event.clientX;
      panel.node.setPointerCapture(event.pointerId);
    }
  });
  panel.node.addEventListener('pointermove', (event) => start !== null && place(event));
  panel.node.addEventListener('pointercancel', stop);
  panel.node.addEventListener('keydown', (event) => event.key === 'Escape' && stop());
  panel.node.addEventListener('pointerup', (event) => {
    if (start !== null && Math.abs(event.clientX - start) >= LEAST_PX) {
      const [from, to] = [start, event.clientX].map(panel.timeAt).sort((a, b) => a - b);
      chosen({ from, to });
    }
    stop();
  });
}
