/** Places of the calibration page that an address can name: `#calibration-7`, `#readings-Blown 1/LID-60/2/3`. */

export const calibrationPlace = (id) => `calibration-${id}`;

export const readingsPlace = ({ line, structure, position, version }) => `readings-${line}/${structure}/${position}/${version}`;

/** Brings what the address names into sight, and the keyboard to it. */
export function goToPlace() {
  const place = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
  if (place) {
    place.tabIndex = -1;
    place.scrollIntoView({ block: 'center' });
    place.focus({ preventScroll: true });
  }
}
