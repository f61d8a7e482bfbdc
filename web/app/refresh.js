/**
 * Runs an asynchronous refresh at most once per interval and never twice at once; a wish that comes
 * while one is running is kept and served afterwards. `stop` lets a late one do nothing.
 */
export function throttled(refresh, leastMs) {
  let timer = null;
  let running = false;
  let wished = false;
  let stopped = false;

  async function run() {
    timer = null;
    running = true;
    wished = false;
    await refresh();
    running = false;
    if (!stopped) {
      timer = setTimeout(rested, leastMs);
    }
  }

  function rested() {
    timer = null;
    if (wished) {
      run();
    }
  }

  function ask() {
    wished = true;
    if (!running && timer === null && !stopped) {
      run();
    }
  }

  function stop() {
    stopped = true;
    clearTimeout(timer);
  }
  return { ask, stop };
}
