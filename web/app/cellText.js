/** A row of a file from its cells, and the rows of a quarantine by line. Pure. */

/** Cells as one row; one that holds the separator, a quotation mark, a line break or outer spaces is quoted. */
export function rowText(cells, separator) {
  return cells.map((cell) => quotedWhereNeeded(cell, separator)).join(separator);
}

function quotedWhereNeeded(cell, separator) {
  const needed = cell.includes(separator) || /["\r\n]/.test(cell) || cell !== cell.trim();
  return needed ? `"${cell.replaceAll('"', '""')}"` : cell;
}

/** Rows of a quarantine, one for each line of the file; a line may be held for several of its cells. */
export function byLine(rows) {
  const lines = new Map();
  for (const row of rows) {
    const held = lines.get(row.line) ?? { ...row, faults: [] };
    held.faults.push({ column: row.column, value: row.value, reason: row.reason });
    lines.set(row.line, held);
  }
  return [...lines.values()];
}
