package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import dev.filmward.film.Structures;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.Set;
import java.util.function.Consumer;

/** The steps that read one file, or one part of it, joined to each other. One owner, one thread. */
final class FileSteps {
  private final Dialect dialect;
  private final ByteBlocks blocks;
  private final Text text;
  private final Row row;
  private final RowReader reader;
  private final Tally tally;
  private final Times times;
  private final RowHead head;
  private final RowTemperature temperature;
  private final Cells cells;
  private final ReadingSink sink;

  FileSteps(Source source, Setting setting, ReadingSink sink, Consumer<Rejection> rejections) {
    this.dialect = source.dialect;
    this.blocks = source.blocks;
    this.text = source.text;
    this.sink = sink;
    this.row = new Row(dialect.columns().size(), text);
    this.reader = new RowReader(blocks, dialect.separator(), row, text);
    this.tally = new Tally(source.fileName, reader, dialect.placesInRow(), rejections);
    this.times = new Times(setting.plantZone);
    this.head = new RowHead(dialect, setting.structures, times, tally);
    this.temperature = new RowTemperature(dialect, tally);
    this.cells = new Cells(head, sink, tally, temperature);
  }

  /** What is read, from after its header or from anywhere else. */
  record Source(String fileName, Dialect dialect, ByteBlocks blocks, Text text) {}

  /** What is known before anything is read. */
  record Setting(Structures structures, ZoneId plantZone) {}

  FileRun run() {
    if (dialect.layout() == Layout.LONG) {
      boolean isSwift = isWithoutTemperature() && SwiftLong.suits(dialect);
      return new FileRun(this, new LongRows(this), isSwift ? new SwiftLong(this) : SwiftRows.NONE);
    }
    WideRows taker = new WideRows(this);
    boolean isSwift = isWithoutTemperature() && SwiftWide.suits(dialect);
    return new FileRun(this, taker, isSwift ? new SwiftWide(this, taker) : SwiftRows.NONE);
  }

  /** Rows that are taken many at once are not asked for their temperature. */
  private boolean isWithoutTemperature() {
    return !dialect.has(Field.TEMPERATURE_C);
  }

  Dialect dialect() {
    return dialect;
  }

  ByteBlocks blocks() {
    return blocks;
  }

  Row row() {
    return row;
  }

  RowReader reader() {
    return reader;
  }

  Tally tally() {
    return tally;
  }

  RowHead head() {
    return head;
  }

  Cells cells() {
    return cells;
  }

  RowTemperature temperature() {
    return temperature;
  }

  ReadingSink sink() {
    return sink;
  }

  /** What may stand for the decimal point besides it, in a field without quotation marks. */
  byte comma() {
    return (byte) (dialect.separator() == Separator.COMMA ? '.' : ',');
  }

  Set<Oddity> oddities() {
    Set<Oddity> seen = EnumSet.noneOf(Oddity.class);
    note(seen, Oddity.OTHER_THAN_UTF8, text.sawOtherThanUtf8());
    note(seen, Oddity.LOCAL_TIME, times.sawLocal());
    note(seen, Oddity.TIME_TWICE, times.sawTwice());
    note(seen, Oddity.DECIMAL_POINT, cells.decimals().sawPoint());
    note(seen, Oddity.DECIMAL_COMMA, cells.decimals().sawComma());
    note(seen, Oddity.NO_SAMPLE, head.sawNoSample());
    return seen;
  }

  private static void note(Set<Oddity> seen, Oddity oddity, boolean wasSeen) {
    if (wasSeen) {
      seen.add(oddity);
    }
  }
}
