package dev.filmward.intake;

import dev.filmward.film.ReadingRun;
import dev.filmward.film.ReadingSink;

/**
 * Rows of the wide layout whose last columns are the lane and then the layers, all of them layers
 * of the structure. One owner, one thread.
 */
final class SwiftWide implements SwiftRows {
  private final ByteBlocks blocks;
  private final RowReader reader;
  private final RowHead head;
  private final WideRows rows;
  private final KnownHead known;
  private final Decimals decimals;
  private final ReadingSink sink;
  private final Tally tally;
  private final ReadingRun run = new ReadingRun();
  private final byte separator;
  private final byte comma;
  private final double[] micrometres;
  private final double[] um;
  private int[] positions = {};

  SwiftWide(FileSteps steps, WideRows rows) {
    Dialect dialect = steps.dialect();
    this.blocks = steps.blocks();
    this.reader = steps.reader();
    this.head = steps.head();
    this.rows = rows;
    this.known = new KnownHead(dialect);
    this.decimals = steps.cells().decimals();
    this.sink = steps.sink();
    this.tally = steps.tally();
    this.separator = (byte) dialect.separator().sign();
    this.comma = steps.comma();
    this.micrometres =
        dialect.layerColumns().stream()
            .mapToDouble(column -> column.unit().orElseThrow().micrometres())
            .toArray();
    this.um = new double[micrometres.length];
  }

  /** Whether the columns of a file stand as they must. */
  static boolean suits(Dialect dialect) {
    int lane = dialect.indexOf(Field.LANE);
    return dialect.layerColumns().size() <= ReadingRun.MOST
        && dialect.columns().size() - dialect.layerColumns().size() == lane + 1
        && dialect.columns().stream()
            .allMatch(c -> c.field() != Field.LAYER_THICKNESS || c.number() > lane + 1);
  }

  @Override
  public void learn(Row row) {
    if (head.isUsable() && reader.linesOfRow() == 1) {
      positions = rows.positionsIn(head.structure());
      for (int position : positions) {
        if (position == LayerNames.NONE) {
          known.forget();
          return;
        }
      }
      known.learn(blocks.bytes, reader.rawStart(), row);
    } else {
      known.forget();
    }
  }

  @Override
  public void takeAlike() {
    boolean goesOn = known.isKnown() && !blocks.isPast();
    while (goesOn) {
      int rows = takeRun();
      goesOn =
          rows > 0
              && !blocks.isPast()
              && (rows == ReadingRun.MOST / um.length
                  || known.goesOn(blocks.bytes, blocks.from, blocks.limit, head));
    }
  }

  /** How many rows there were. */
  private int takeRun() {
    run.clear();
    int next = fill(blocks.bytes, blocks.from, Math.min(blocks.bound(), blocks.wholeLines));
    int rows = run.size() / um.length;
    if (rows > 0) {
      sink.readings(head.giveKey(), head.takenAt(), head.structure(), run);
      blocks.from = Math.min(next, blocks.limit);
      blocks.line += rows;
      tally.measured(rows);
    }
    return rows;
  }

  /** Where the first row starts that was not taken. */
  private int fill(byte[] bytes, int start, int bound) {
    int from = start;
    while (from < bound && run.size() + um.length <= ReadingRun.MOST) {
      int end = end(bytes, from);
      if (end < 0) {
        break;
      }
      for (int i = 0; i < um.length; i++) {
        run.add(positions[i], known.lane(), um[i]);
      }
      from = end + 1;
    }
    return from;
  }

  /** Where the row ends that starts at {@code from}, or less than 0. */
  private int end(byte[] bytes, int from) {
    int at = known.after(bytes, from, blocks.limit);
    for (int i = 0; i < um.length && at >= 0; i++) {
      at = cell(bytes, at, i);
    }
    return at;
  }

  /** Where the field after a cell begins, or after the last one the line feed stands. */
  private int cell(byte[] bytes, int start, int index) {
    boolean quoted = bytes[start] == '"';
    double number =
        decimals.leading(bytes, quoted ? start + 1 : start, quoted ? (byte) ',' : comma);
    int at = decimals.stop();
    if (!(number > 0) || (quoted && bytes[at++] != '"')) {
      return KnownHead.UNLIKE;
    }
    um[index] = number * micrometres[index];
    if (index < um.length - 1) {
      return bytes[at] == separator ? at + 1 : KnownHead.UNLIKE;
    }
    if (bytes[at] == '\r') {
      at++;
    }
    return bytes[at] == '\n' ? at : KnownHead.UNLIKE;
  }
}
