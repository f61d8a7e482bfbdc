package dev.filmward.intake;

import dev.filmward.film.ReadingRun;
import dev.filmward.film.ReadingSink;

/**
 * Rows of the long layout whose last columns are lane, layer and thickness. One owner, one thread.
 */
final class SwiftLong implements SwiftRows {
  private final ByteBlocks blocks;
  private final RowReader reader;
  private final RowHead head;
  private final KnownHead known;
  private final Decimals decimals;
  private final ReadingSink sink;
  private final Tally tally;
  private final ReadingRun run = new ReadingRun();
  private final byte separator;
  private final byte comma;
  private final double micrometres;
  private final PerStructure<RawLayers> layersOf;
  private RawLayers layers = RawLayers.NONE;
  private double um;

  SwiftLong(FileSteps steps) {
    Dialect dialect = steps.dialect();
    this.blocks = steps.blocks();
    this.reader = steps.reader();
    this.head = steps.head();
    this.known = new KnownHead(dialect);
    this.decimals = steps.cells().decimals();
    this.sink = steps.sink();
    this.tally = steps.tally();
    this.separator = (byte) dialect.separator().sign();
    this.comma = steps.comma();
    this.micrometres =
        dialect.columns().get(dialect.indexOf(Field.THICKNESS)).unit().orElseThrow().micrometres();
    this.layersOf = new PerStructure<>(structure -> RawLayers.of(structure, separator));
  }

  /** Whether the columns of a file stand as they must. */
  static boolean suits(Dialect dialect) {
    int last = dialect.columns().size() - 1;
    return dialect.indexOf(Field.LANE) == last - 2
        && dialect.indexOf(Field.LAYER) == last - 1
        && dialect.indexOf(Field.THICKNESS) == last;
  }

  @Override
  public void learn(Row row) {
    if (!head.isUsable() || reader.linesOfRow() > 1) {
      known.forget();
      return;
    }
    known.learn(blocks.bytes, reader.rawStart(), row);
    layers = layersOf.of(head.structure());
  }

  @Override
  public void takeAlike() {
    boolean goesOn = known.isKnown() && !blocks.isPast();
    while (goesOn) {
      int rows = takeRun();
      goesOn =
          rows > 0
              && !blocks.isPast()
              && (rows == ReadingRun.MOST
                  || known.goesOn(blocks.bytes, blocks.from, blocks.limit, head));
    }
  }

  /** How many rows there were. */
  private int takeRun() {
    run.clear();
    int next = fill(blocks.bytes, blocks.from, Math.min(blocks.bound(), blocks.wholeLines));
    int rows = run.size();
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
    for (int rows = 0; from < bound && rows < ReadingRun.MOST; rows++) {
      int at = known.after(bytes, from, blocks.limit);
      at = at < 0 ? at : layers.after(bytes, at);
      at = at < 0 ? at : thickness(bytes, at);
      if (at < 0) {
        break;
      }
      run.add(layers.position(), known.lane(), um);
      from = at + 1;
    }
    return from;
  }

  /** Where the row ends whose last field starts there, or less than 0. */
  private int thickness(byte[] bytes, int start) {
    boolean quoted = bytes[start] == '"';
    double number =
        decimals.leading(bytes, quoted ? start + 1 : start, quoted ? (byte) ',' : comma);
    int at = decimals.stop();
    if (!(number > 0) || (quoted && bytes[at++] != '"')) {
      return KnownHead.UNLIKE;
    }
    if (bytes[at] == '\r') {
      at++;
    }
    um = number * micrometres;
    return bytes[at] == '\n' ? at : KnownHead.UNLIKE;
  }
}
