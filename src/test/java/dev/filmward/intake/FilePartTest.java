package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A file read in parts, or row by row without any short cut, gives what it gives in one go. */
class FilePartTest {
  private static final int FILES = 100;

  private static PlainHead head(byte[] csv) throws Exception {
    return (PlainHead)
        new ReadingsParser(Film.BOTH, Seen.PLANT)
            .head(new ByteArrayInputStream(csv), "readings.csv");
  }

  /** Row by row, each through the fields of a row. */
  private static Seen slowly(byte[] csv) throws Exception {
    Seen seen = new Seen();
    PlainHead head = head(csv);
    FileRun run = head.run(seen, seen.events::add);
    while (run.next()) {
      run.take();
    }
    seen.count = head.count(run.counts(), run.oddities());
    return seen;
  }

  /** In parts that are cut at some places, each read before it is known where rows start. */
  private static Seen inParts(byte[] csv, List<Long> cuts) throws Exception {
    Seen whole = new Seen();
    PlainHead head = head(csv);
    PartCount.Sum sum = new PartCount.Sum();
    FilePart truth = FilePart.fromRow(head.firstRow(), Long.MAX_VALUE);
    long lines = head.linesBefore();
    List<Long> stops = new ArrayList<>(cuts);
    stops.add(Long.MAX_VALUE);
    long start = head.firstRow();
    for (long stop : stops) {
      FilePart guess =
          start == head.firstRow()
              ? FilePart.fromRow(start, stop)
              : FilePart.somewhere(start, stop);
      Seen part = new Seen();
      PartCount count = read(head, csv, guess, part);
      if (!count.follows(truth)) {
        part = new Seen();
        count = read(head, csv, truth.until(stop), part);
      }
      append(whole, part, lines);
      sum.add(count);
      lines += count.lines();
      truth = count.next();
      start = stop;
    }
    whole.count = head.count(sum);
    return whole;
  }

  private static PartCount read(PlainHead head, byte[] csv, FilePart part, Seen into)
      throws Exception {
    int from = (int) Math.min(csv.length, part.opensAt());
    InputStream in = new ByteArrayInputStream(csv, from, csv.length - from);
    return head.partReader().read(in, part, into, into.events::add);
  }

  private static void append(Seen whole, Seen part, long lines) {
    whole.places.addAll(part.places);
    for (Object event : part.events) {
      whole.events.add(event instanceof Rejection at ? at.lower(lines) : event);
    }
  }

  private static byte[] file(long seed, Layout layout) {
    RandomCsv.Quotes[] quotes = RandomCsv.Quotes.values();
    String text =
        new RandomCsv(seed, layout).written(quotes[(int) (seed % quotes.length)], seed + 1)
            + (seed % 5 == 0 ? "\n\"open\nx\",\"\ny\n  \n\n\"z" : "");
    return text.getBytes(StandardCharsets.UTF_8);
  }

  @ParameterizedTest
  @EnumSource
  void theShortCutGivesWhatTheWayThroughFieldsGives(Layout layout) throws Exception {
    for (long seed = 0; seed < 10 * FILES; seed++) {
      byte[] csv = file(seed, layout);
      Seen slow = slowly(csv);
      Seen swift = Seen.in(csv);
      assertThat(swift.events).as("seed %d", seed).isEqualTo(slow.events);
      assertThat(swift.count).as("seed %d", seed).isEqualTo(slow.count);
    }
  }

  @ParameterizedTest
  @EnumSource
  void oneCutAtAnyByteChangesNothing(Layout layout) throws Exception {
    for (long seed = 0; seed < 5; seed++) {
      byte[] csv = file(seed, layout);
      Seen whole = Seen.in(csv);
      for (long cut = head(csv).firstRow(); cut <= csv.length; cut++) {
        Seen parts = inParts(csv, List.of(cut));
        assertThat(parts.events).as("seed %d, cut %d", seed, cut).isEqualTo(whole.events);
        assertThat(parts.count).as("seed %d, cut %d", seed, cut).isEqualTo(whole.count);
      }
    }
  }

  @ParameterizedTest
  @EnumSource
  void manyCutsChangeNothing(Layout layout) throws Exception {
    for (long seed = 0; seed < FILES; seed++) {
      byte[] csv = file(seed, layout);
      Seen whole = Seen.in(csv);
      Random random = new Random(seed);
      long first = head(csv).firstRow();
      List<Long> cuts =
          random
              .longs(random.nextInt(20), first, Math.max(first + 1, csv.length + 5L))
              .sorted()
              .boxed()
              .toList();
      Seen parts = inParts(csv, cuts);
      assertThat(parts.events).as("seed %d, cuts %s", seed, cuts).isEqualTo(whole.events);
      assertThat(parts.count).as("seed %d", seed).isEqualTo(whole.count);
    }
  }

  @Test
  void decimalsAreTheNearestDoubleOnTheShortCutToo() throws Exception {
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    StringBuilder csv = new StringBuilder(LongLayoutTest.HEADER);
    List<Double> expected = new ArrayList<>();
    for (int i = 0; i < 20_000; i++) {
      String number = number(random);
      double value = Double.parseDouble(number);
      if (value > 0) {
        expected.add(value);
        csv.append("2026-11-25T09:30Z,L1,LID-60,R7,S12,3,2,").append(number).append('\n');
      }
    }
    assertThat(Seen.in(csv.toString()).ums()).as("seed %d", seed).isEqualTo(expected);
  }

  private static String number(Random random) {
    StringBuilder text = new StringBuilder();
    int digits = 1 + random.nextInt(22);
    int point = random.nextInt(digits + 2);
    for (int i = 0; i < digits; i++) {
      text.append(i == point ? "." : "").append(random.nextInt(10));
    }
    return text.toString();
  }

  @Test
  void aFileOfCarriageReturnsOrInUtf16IsNotDivided() throws Exception {
    String csv = LongLayoutTest.HEADER + LongLayoutTest.ROW;
    assertThat(head(csv.getBytes(StandardCharsets.UTF_8)).isDivisible()).isTrue();
    assertThat(head(csv.replace('\n', '\r').getBytes(StandardCharsets.UTF_8)).isDivisible())
        .isFalse();
    assertThat(head(csv.getBytes(StandardCharsets.UTF_16)).isDivisible()).isFalse();
  }

  @Test
  void aByteOrderMarkIsCountedWhereRowsStart() throws Exception {
    byte[] csv = ("\uFEFF" + LongLayoutTest.HEADER).getBytes(StandardCharsets.UTF_8);
    assertThat(head(csv).firstRow()).isEqualTo(csv.length);
  }
}
