package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.Collections;
import java.util.Enumeration;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files made to harm, or harmed: the rows at fault are rejected and all others read. */
class HostileFileTest {
  private static final int MIB = 1024 * 1024;
  private static final String H = LongLayoutTest.HEADER;
  private static final String ROW = LongLayoutTest.ROW;
  private static final String WIDE =
      "taken_at,line,structure,roll,sample,lane,layer_1_um,layer_2_um,layer_3_um\n";

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** The same bytes over and over, without holding them. */
  private static InputStream repeated(String start, String text, int times) {
    byte[] bytes = utf8(text);
    var copies =
        Collections.nCopies(times, bytes).stream().map(ByteArrayInputStream::new).iterator();
    InputStream rest =
        new SequenceInputStream(
            new Enumeration<InputStream>() {
              @Override
              public boolean hasMoreElements() {
                return copies.hasNext();
              }

              @Override
              public InputStream nextElement() {
                return copies.next();
              }
            });
    return new SequenceInputStream(new ByteArrayInputStream(utf8(start)), rest);
  }

  @Test
  void aGiantFieldIsCutAndItsRowRejected() throws Exception {
    Seen seen = Seen.in(H + ROW.replace("4.25", "9".repeat(900_000)) + ROW);

    Rejection rejection = seen.rejection();
    assertThat(rejection.reason())
        .hasSizeLessThan(400)
        .endsWith("9…\" is not finite; leave it empty where nothing was measured");
    assertThat(rejection.value()).hasSize(201).endsWith("9…");
    assertThat(rejection.raw())
        .hasSize(64 * 1024 + RowReader.CUT_MARK.length())
        .endsWith("9 [cut here; the row goes on]");
    assertThat(seen.places).hasSize(1);
  }

  @Test
  void aRowIsAtMostOneMebibyteLong() throws Exception {
    String around = ROW.replace("S12", "").strip();
    String longest = "x".repeat(MIB - around.length());
    for (String name : List.of(longest, longest + "x", longest + longest + longest)) {
      Seen seen = Seen.in(H + ROW + ROW.replace("S12", name) + ROW);

      assertThat(seen.count.rows()).isEqualTo(3);
      if (name.length() == longest.length()) {
        assertThat(seen.rejections).isEmpty();
      } else {
        assertThat(seen.rejection().line()).isEqualTo(3);
        assertThat(seen.rejection().column()).isEmpty();
        assertThat(seen.rejection().reason())
            .isEqualTo("the row is longer than 1 MiB; no row of readings is");
        assertThat(seen.rejection().raw()).hasSizeLessThan(70_000);
      }
    }
  }

  @Test
  void aQuotedRowIsAtMostOneMebibyteLong() throws Exception {
    String around = ROW.replace("S12", "\"\"").strip();
    String longest = "x".repeat(MIB - around.length());

    assertThat(Seen.in(H + ROW.replace("S12", "\"" + longest + "\"") + ROW).places).hasSize(2);

    Seen over = Seen.in(H + ROW.replace("S12", "\"" + longest + "x\"") + ROW);
    assertThat(over.places).hasSize(1);
    assertThat(over.rejection().reason()).startsWith("the row is longer than 1 MiB");
  }

  @Test
  void aGiantBlankLineIsBlank() throws Exception {
    String blank = " ".repeat(3 * MIB);
    Seen seen = Seen.in(H + ROW + blank + "\n" + blank + ROW + "x\n" + blank);

    assertThat(seen.places).hasSize(2);
    assertThat(seen.rejection().line()).isEqualTo(5);
  }

  @Test
  void aGiantRowAtTheEndOfTheFileIsTheLast() throws Exception {
    for (int length : new int[] {MIB + 1, 2 * MIB, 5 * MIB}) {
      Seen seen = Seen.in(H + ROW + "x".repeat(length));

      assertThat(seen.places).hasSize(1);
      assertThat(seen.rejection().line()).isEqualTo(3);
    }
  }

  @Test
  void theCutOfARawRowDoesNotSplitASign() throws Exception {
    for (int shift = 0; shift < 4; shift++) {
      String raw = Seen.in(H + "x".repeat(shift) + "漢".repeat(30_000) + "\n").rejection().raw();

      assertThat(raw).endsWith("漢 [cut here; the row goes on]").doesNotContain("\ufffd", "æ");
    }
  }

  @Test
  void aRowOfAMillionFieldsIsCounted() throws Exception {
    Seen seen = Seen.in(H + ",".repeat(1_000_000) + "\n" + ROW);

    assertThat(seen.rejection().reason()).startsWith("1000001 fields where the header has 8");
    assertThat(seen.places).hasSize(1);
  }

  @Test
  void aQuoteThatNeverClosesCostsItsLineOnly() throws Exception {
    String rows = ROW.repeat(50_000); // 2.5 MB
    Seen seen = Seen.in(H + ROW + ROW.replace("S12", "\"S12") + rows);

    assertThat(seen.rejection().line()).isEqualTo(3);
    assertThat(seen.rejection().raw()).isEqualTo(ROW.replace("S12", "\"S12").strip());
    assertThat(seen.places).hasSize(50_001);
  }

  @Test
  void beyondTheLinesSearchedForAQuoteALineFeedMayBeQuotedAgain() throws Exception {
    String open = ROW.replace("S12", "\"S12");
    String twoLines = ROW.replace("S12", "\"S\n12\"");
    String mebibyte = ROW.repeat(MIB / ROW.length() + 1);
    Seen seen = Seen.in(H + open + mebibyte + twoLines.repeat(100_000));

    assertThat(seen.rejections).hasSize(1);
    assertThat(seen.places).endsWith(Seen.in(H + twoLines).place());
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 5, 20_000})
  void twoStrayQuotesDoNotSwallowTheRowsBetweenThem(int between) throws Exception {
    String stray = ROW.replace("S12", "\"S12");
    Seen seen = Seen.in(H + stray + ROW.repeat(between) + ROW.replace("S12", "S\"") + ROW);

    assertThat(seen.rejection().line()).isEqualTo(2);
    assertThat(seen.rejection().raw()).isEqualTo(stray.strip());
    assertThat(seen.rejection().reason())
        .isEqualTo(
            "a quotation mark is opened and not closed before what looks like the next row;"
                + " close it, or double it where it is part of the text");
    assertThat(seen.places).hasSize(between + 2);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "x\",\"\n",
        "\"\n",
        "\"a\n",
        "\",\"\n",
        "\"\"\"\n",
        "a,\"b\n\",\"\n",
        "\n",
        "\r",
        "\"\r\n",
        " \n",
        "\"a\"\"\n",
        ",\"\"\",\"x\n",
        "\0\n",
        "\0"
      })
  void noPatternOfLinesTakesMoreThanLinearTime(String line) {
    // to search 1 MiB again from each of a million lines would take minutes
    int times = 8 * MIB / line.length();
    String unit = line.repeat(MIB / line.length());

    Assertions.assertTimeoutPreemptively(
        Duration.ofSeconds(20),
        () -> {
          Counted counted = new Counted();
          new ReadingsParser(Film.BOTH, Seen.PLANT)
              .parse(repeated(H, unit, 8), "hostile.csv", counted, counted::rejected);
          assertThat(counted.rejections).isLessThanOrEqualTo(times + 8L);
        });
  }

  @Test
  void aMillionBadRowsAreRejectedOneByOne() throws Exception {
    Counted counted = new Counted();

    FileCount count =
        new ReadingsParser(Film.BOTH, Seen.PLANT)
            .parse(
                repeated(H, ROW.replace("LID-60", "LID-06").repeat(1000), 1000),
                "hostile.csv",
                counted,
                counted::rejected);

    assertThat(count.quarantined()).isEqualTo(1_000_000);
    assertThat(counted.rejections).isEqualTo(1_000_000);
  }

  @Test
  void hostileNamesStayAsTheyAre() throws Exception {
    for (String name :
        List.of(
            "<script>alert(1)</script>",
            "'; DROP TABLE sample; --",
            "\u202egnp.exe",
            "=1+1",
            "../../etc/passwd",
            "%s%n${x}{0}",
            "\u0000\u0007\u001b[2J",
            "a\u0301\u0301\u0301",
            "\ufeff")) {
      Seen seen = Seen.in(H + ROW.replace("S12", name).replace("L1", name));

      assertThat(seen.place().key().sample()).isEqualTo(name);
      assertThat(seen.place().key().line()).isEqualTo(name);
    }
  }

  @Test
  void randomBytesAreRejectedAndNeverAnythingElse() throws Exception {
    for (int seed = 0; seed < 40; seed++) {
      Random random = new Random(seed);
      byte[] noise = new byte[100_000];
      random.nextBytes(noise);
      for (String header : List.of("", H, H.replace(',', '\t'), WIDE.replace(',', ';'))) {
        check(concat(utf8(header), noise), "seed " + seed);
      }
    }
  }

  @Test
  void randomSignsOfCsvAreReadOrRejectedAndNeverAnythingElse() throws Exception {
    String signs = "\"\"\",,,,\n\n\r12.5-;\t é";
    for (int seed = 0; seed < 400; seed++) {
      Random random = new Random(seed);
      StringBuilder text = new StringBuilder(seed % 2 == 0 ? H : WIDE);
      for (int i = 0; i < 5000; i++) {
        text.append(
            random.nextInt(50) == 0 ? ROW : signs.charAt(random.nextInt(signs.length())) + "");
      }
      check(utf8(text.toString()), "seed " + seed);
    }
  }

  @Test
  void harmedFilesAreReadOrRejectedAndNeverAnythingElse() throws Exception {
    for (int seed = 0; seed < 400; seed++) {
      Random random = new Random(seed);
      Layout layout = Layout.values()[seed % 2];
      byte[] bytes = utf8(new RandomCsv(seed, layout).written(RandomCsv.Quotes.ANYWHERE, seed + 1));
      for (int i = 0; i < 20; i++) {
        bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
      }
      check(Arrays.copyOf(bytes, random.nextInt(bytes.length + 1)), "seed " + seed);
    }
  }

  private static byte[] concat(byte[] start, byte[] end) {
    byte[] all = Arrays.copyOf(start, start.length + end.length);
    System.arraycopy(end, 0, all, start.length, end.length);
    return all;
  }

  private static void check(byte[] bytes, String as) throws Exception {
    try {
      Seen seen = Seen.in(bytes);
      FileCount count = seen.count;
      long lost = seen.rejections.stream().mapToInt(Rejection::readings).sum();
      assertThat(count.quarantined()).as(as).isEqualTo(lost);
      assertThat(count.readings())
          .as(as)
          .isEqualTo(seen.places.stream().filter(place -> place.um() > 0).count());
      if (count.rows() > 0) {
        assertThat((count.readings() + count.missing() + lost) % count.rows()).as(as).isZero();
      }
    } catch (FileRefused refused) {
      assertThat(refused.getMessage()).as(as).startsWith("readings.csv").hasSizeLessThan(2000);
    } catch (RuntimeException | Error e) {
      throw new AssertionError(as, e);
    }
  }
}
