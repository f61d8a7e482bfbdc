package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.intake.Seen.Place;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * A hundred thousand files, some of their rows harmed by chance. Whatever was done to a row, the
 * rows that were not harmed are read as they stand, each once and in their order, and every place
 * is counted. A failure names its seed.
 */
class FuzzedFilesTest {
  private static final int FILES = 100_000;
  private static final int ROWS = 12;
  private static final int LAYERS = 3;
  private static final String LONG = "taken_at,line,structure,roll,sample,lane,layer,thickness_um";
  private static final String WIDE =
      "taken_at,line,structure,roll,sample,lane,layer_1_um,layer_2_um,layer_3_um";

  @Test
  void noHarmToARowCostsAnotherRow() {
    long harmedRows = IntStream.range(0, FILES).parallel().mapToLong(FuzzedFilesTest::check).sum();
    // a sixth of the rows on average, but for those where a dice said no harm
    assertThat(harmedRows).isBetween(FILES * ROWS / 10L, FILES * ROWS / 4L);
  }

  private static long check(int seed) {
    try {
      Random random = new Random(seed);
      Layout layout = Layout.values()[seed % 2];
      List<Integer> harmed = new ArrayList<>();
      StringBuilder file = new StringBuilder(layout == Layout.LONG ? LONG : WIDE).append('\n');
      for (int row = 0; row < ROWS; row++) {
        String good = row(row, layout);
        boolean harm = random.nextInt(6) == 0;
        if (harm) {
          harmed.add(row);
        }
        file.append(harm ? harm(good, random) : good).append(seed % 3 == 0 ? "\r\n" : "\n");
      }
      // ISO 8859-1 gives any byte; the header keeps a harmed row from changing what others mean
      Seen seen = Seen.in(file.toString().getBytes(StandardCharsets.ISO_8859_1));
      checkCounts(seen, layout);
      checkOthers(seen, harmed, layout);
      return harmed.size();
    } catch (Exception | AssertionError e) {
      throw new AssertionError("seed " + seed, e);
    }
  }

  private static void checkCounts(Seen seen, Layout layout) {
    FileCount count = seen.count;
    int places = layout == Layout.LONG ? 1 : LAYERS;
    long lost = seen.rejections.stream().mapToInt(Rejection::readings).sum();
    long measured = seen.places.stream().filter(place -> place.um() > 0).count();
    assertThat(count.rows() * places).isEqualTo(measured + count.missing() + lost);
    assertThat(count.readings()).isEqualTo(measured);
    assertThat(count.quarantined()).isEqualTo(lost);
    for (Rejection rejection : seen.rejections) {
      assertThat(rejection.reason()).hasSizeBetween(10, 1000);
    }
  }

  private static void checkOthers(Seen seen, List<Integer> harmed, Layout layout) {
    int next = 0;
    for (int row = 0; row < ROWS; row++) {
      for (int layer = 1; layer <= (layout == Layout.LONG ? 1 : LAYERS); layer++) {
        if (harmed.contains(row)) {
          continue;
        }
        next = find(seen.places, next, row, layout == Layout.LONG ? layerOf(row) : layer) + 1;
      }
    }
  }

  private static int find(List<Place> places, int from, int row, int layer) {
    for (int i = from; i < places.size(); i++) {
      Place place = places.get(i);
      if (place.lane() == lane(row)
          && place.key().sample().equals("S" + row)
          && place.position() == layer
          && place.um() == thousandths(row, layer) / 1000.0) {
        return i;
      }
    }
    throw new AssertionError("row " + row + ", layer " + layer + " is lost or out of order");
  }

  private static String row(int row, Layout layout) {
    String head = "2026-11-25T09:30:0" + row % 10 + "Z,Blown 1,LID-60,R1,S" + row + "," + lane(row);
    if (layout == Layout.LONG) {
      return head + "," + layerOf(row) + "," + text(row, layerOf(row));
    }
    return head + "," + text(row, 1) + "," + text(row, 2) + "," + text(row, 3);
  }

  private static int lane(int row) {
    return 1 + row % 5;
  }

  private static int layerOf(int row) {
    return 1 + row % LAYERS;
  }

  private static int thousandths(int row, int layer) {
    return 10_000 + 1_111 * layer + 7 * row;
  }

  private static String text(int row, int layer) {
    String digits = Integer.toString(thousandths(row, layer));
    return digits.substring(0, 2) + "." + digits.substring(2);
  }

  /** Anything may happen to a row but line ends, which would make it two, and quotation marks. */
  private static String harm(String row, Random random) {
    StringBuilder harmed = new StringBuilder(row);
    for (int i = 1 + random.nextInt(4); i > 0; i--) {
      int at = random.nextInt(harmed.length() + 1);
      switch (random.nextInt(7)) {
        case 0 -> harmed.insert(at, sign(random));
        case 1 -> harmed.setLength(Math.max(1, at));
        case 2 -> harmed.replace(at, Math.min(at + 1, harmed.length()), "" + sign(random));
        case 3 -> harmed.delete(at, Math.min(at + 1 + random.nextInt(5), harmed.length()));
        case 4 -> harmed.insert(at, harmed.substring(at));
        case 5 -> harmed.insert(at, ",".repeat(1 + random.nextInt(3)));
        default -> swapFields(harmed, random);
      }
      harmed.append(harmed.isEmpty() ? "x" : "");
    }
    return harmed.toString();
  }

  private static void swapFields(StringBuilder row, Random random) {
    String[] fields = row.toString().split(",", -1);
    int one = random.nextInt(fields.length);
    int other = random.nextInt(fields.length);
    String kept = fields[one];
    fields[one] = fields[other];
    fields[other] = kept;
    row.setLength(0);
    row.append(String.join(",", Arrays.asList(fields)));
  }

  private static char sign(Random random) {
    char sign = (char) random.nextInt(256);
    return sign == '\n' || sign == '\r' || sign == '"' ? '\u00b5' : sign;
  }
}
