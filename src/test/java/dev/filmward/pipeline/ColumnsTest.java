package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.film.SampleKey;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Columns give back what was put in, beside plain lists of the same. */
class ColumnsTest {
  private static final int MANY = 20_000;

  private final long seed = new Random().nextLong();
  private final Random random = new Random(seed);

  private SampleKey key() {
    String name = "Sż\uD83D\uDE00".substring(0, random.nextInt(3) == 0 ? 2 : 1);
    String sample = name.repeat(random.nextInt(300) == 0 ? 9000 : 1) + random.nextInt(100_000);
    return new SampleKey("L", "F", "R" + random.nextInt(3), random.nextInt(9) == 0 ? "" : sample);
  }

  @Test
  void namesAndRolls() {
    NameColumn names = new NameColumn();
    List<SampleKey> keys = new ArrayList<>();
    for (int i = 0; i < MANY; i++) {
      keys.add(key());
      names.add(keys.get(i));
    }
    for (int i = 0; i < MANY; i++) {
      assertThat(names.sample(i)).as("seed %d", seed).isEqualTo(keys.get(i).sample());
      assertThat(names.roll(i)).as("seed %d", seed).isEqualTo(keys.get(i).roll());
    }
  }

  @Test
  void samplesThatHaveCome() {
    SeenSamples seen = new SeenSamples();
    Set<SampleKey> set = new HashSet<>();
    for (int i = 0; i < 3 * MANY; i++) {
      SampleKey key = key();
      assertThat(seen.add(key)).as("seed %d, %s", seed, key).isEqualTo(set.add(key));
    }
  }

  @Test
  void sizesThatAreMostlyTheSame() {
    SizeColumn sizes = new SizeColumn();
    List<Integer> list = new ArrayList<>();
    for (int i = 0; i < MANY; i++) {
      list.add(i < MANY / 2 || random.nextInt(1000) > 0 ? 5 : random.nextInt(6));
      sizes.add(list.get(i));
    }
    for (int i = 0; i < MANY; i++) {
      assertThat(sizes.get(i)).as("seed %d", seed).isEqualTo(list.get(i));
    }
  }
}
