package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** However a file is written and delivered, the same is read of it. */
class EquivalenceTest {
  private static final int FILES = 1500;

  /** What the reference reader gives too: rejections without their place and reason. */
  private static List<Object> comparable(Seen seen) {
    return seen.events.stream()
        .map(
            event ->
                event instanceof Rejection rejection
                    ? new ReferenceReader.Rejected(
                        rejection.column(), rejection.value(), rejection.readings())
                    : event)
        .toList();
  }

  private static Seen read(String csv) throws Exception {
    return Seen.in(csv);
  }

  @ParameterizedTest
  @EnumSource
  void everyWayOfWritingGivesWhatTheReferenceGives(Layout layout) throws Exception {
    for (long seed = 0; seed < FILES; seed++) {
      RandomCsv csv = new RandomCsv(seed, layout);
      List<Object> expected = ReferenceReader.read(csv.rows);
      long strays = expected.stream().filter("missing"::equals).count();
      List<Object> places = expected.stream().filter(e -> !e.equals("missing")).toList();
      for (RandomCsv.Quotes quotes : RandomCsv.Quotes.values()) {
        String text = csv.written(quotes, seed + 1);

        Seen seen = read(text);

        String as = "seed " + seed + ", quotes " + quotes + ":\n" + text;
        assertThat(comparable(seen)).as(as).isEqualTo(places);
        assertThat(seen.count.rows()).as(as).isEqualTo(csv.rows.size() - 1);
        assertThat(seen.count.missing())
            .as(as)
            .isEqualTo(strays + seen.ums().stream().filter(um -> um.isNaN()).count());
      }
    }
  }

  @ParameterizedTest
  @EnumSource
  void theBlocksInWhichBytesArriveDoNotMatter(Layout layout) throws Exception {
    for (long seed = 0; seed < FILES / 5; seed++) {
      String text =
          new RandomCsv(seed, layout).written(RandomCsv.Quotes.ANYWHERE, seed + 1)
              + (seed % 3 == 0 ? "\n\"open\nx\",\"\ny" : "");
      byte[] bytes = text.getBytes(StandardCharsets.UTF_8);

      Seen whole = read(text);
      Seen pieces = Seen.in(new Pieces(bytes, seed), Film.BOTH);

      assertThat(pieces.events).as("seed " + seed).isEqualTo(whole.events);
      assertThat(pieces.count).as("seed " + seed).isEqualTo(whole.count);
    }
  }

  @ParameterizedTest
  @EnumSource
  void theEncodingDoesNotMatter(Layout layout) throws Exception {
    for (long seed = 0; seed < FILES / 5; seed++) {
      String text = new RandomCsv(seed, layout).written(RandomCsv.Quotes.ANYWHERE, seed + 1);
      Seen utf8 = read(text);
      for (String charset : List.of("UTF-16", "UTF-16LE", "UTF-16BE")) {
        Seen other = Seen.in(text.getBytes(Charset.forName(charset)));

        assertThat(other.events).as("seed " + seed + " " + charset).isEqualTo(utf8.events);
      }
    }
  }

  @Test
  void rowsThatCrossTheBlocksOfTheReaderAreReadAlike() throws Exception {
    // several blocks of 256 KiB, and rows of many lengths across their borders
    Random random = new Random(7);
    StringBuilder plain = new StringBuilder(LongLayoutTest.HEADER);
    StringBuilder quoted = new StringBuilder(LongLayoutTest.HEADER);
    for (int i = 0; i < 20_000; i++) {
      String name = "S" + i / 25 + "x".repeat(random.nextInt(100) == 0 ? 3000 : 1);
      String row = "2026-11-25T09:30Z,L1,LID-60,R7,%s,3,2," + (1 + random.nextInt(9999)) / 100.0;
      plain.append(row.formatted(name)).append('\n');
      quoted.append(row.formatted("\"" + name + "\"")).append("\r\n");
    }

    Seen seen = Seen.in(plain.toString());

    assertThat(seen.places).hasSize(20_000);
    assertThat(Seen.in(quoted.toString()).places).isEqualTo(seen.places);
    assertThat(Seen.in(plain.toString().getBytes(StandardCharsets.UTF_16)).places)
        .isEqualTo(seen.places);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 5, 7})
  void rowsOfOneLengthAreNotTakenForEachOther(int names) throws Exception {
    // rows then lie at the same places of every block, and the block's end cuts them anywhere
    for (int length = 1; length < 15; length++) {
      StringBuilder csv = new StringBuilder(LongLayoutTest.HEADER);
      List<String> samples = new ArrayList<>();
      for (int i = 0; i < 18_000; i++) {
        samples.add("S".repeat(length) + i % names);
        csv.append(LongLayoutTest.ROW.replace("S12", samples.get(i)));
      }

      assertThat(Seen.in(csv.toString()).places)
          .extracting(place -> place.key().sample())
          .isEqualTo(samples);
    }
  }

  /** Gives its bytes in pieces of random length, often of one. */
  private static final class Pieces extends InputStream {
    private final InputStream whole;
    private final Random random;

    Pieces(byte[] bytes, long seed) {
      this.whole = new ByteArrayInputStream(bytes);
      this.random = new Random(seed);
    }

    @Override
    public int read() {
      throw new AssertionError("one byte at a time is slow");
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
      int piece = random.nextBoolean() ? 1 : 1 + random.nextInt(50);
      return whole.read(into, offset, Math.min(length, piece));
    }
  }
}
