package dev.filmward.gauge.screen;

import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Ways to misread a sample as a whole: upside down, as two walls, or in another unit. Immutable.
 *
 * @param positions whose readings are not of their layer
 * @param exported from the film's times of flight to what is exported
 */
record WholeSample(
    Misread kind, List<Integer> positions, UnaryOperator<double[]> exported, String words)
    implements Misreading {
  private static final double UM_PER_MIL = 25.4;

  WholeSample {
    positions = List.copyOf(positions);
  }

  private record Slip(double factor, String words) {}

  private static final List<Slip> SLIPS =
      List.of(
          new Slip(UM_PER_MIL, "25.4 times (um taken for mil)"),
          new Slip(1 / UM_PER_MIL, "1/25.4 of (mil taken for um)"),
          new Slip(0.254, "0.254 times (hundredths of a mil taken for um, and back)"),
          new Slip(1 / 0.254, "1/0.254 times (um taken for hundredths of a mil)"),
          new Slip(1000, "1000 times (um taken for mm)"),
          new Slip(0.001, "1/1000 of (mm taken for um)"),
          new Slip(10, "10 times (a decimal point one place off)"),
          new Slip(0.1, "1/10 of (a decimal point one place off)"),
          new Slip(100, "100 times (a decimal point two places off)"),
          new Slip(0.01, "1/100 of (a decimal point two places off)"));

  static Stream<Misreading> all(int layers) {
    List<Integer> every = IntStream.rangeClosed(1, layers).boxed().toList();
    Stream<Misreading> slips = SLIPS.stream().map(slip -> slipped(every, slip));
    return layers == 1
        ? slips
        : Stream.concat(slips, Stream.of(upsideDown(every), doubledLast(layers), doubled(every)));
  }

  private static Misreading slipped(List<Integer> every, Slip slip) {
    return new WholeSample(
        Misread.UNIT_SLIP,
        every,
        film -> scaled(film, slip.factor),
        "All layers read " + slip.words + " what they should");
  }

  private static Misreading upsideDown(List<Integer> every) {
    return new WholeSample(
        Misread.UPSIDE_DOWN,
        every,
        WholeSample::reversed,
        "The layers read in the opposite order fit the structure");
  }

  private static Misreading doubledLast(int layers) {
    return new WholeSample(
        Misread.TWO_WALLS,
        List.of(layers),
        film -> {
          double[] exported = film.clone();
          exported[layers - 1] *= 2;
          return exported;
        },
        "The innermost layer reads twice, as where two walls lie face to face");
  }

  private static Misreading doubled(List<Integer> every) {
    return new WholeSample(
        Misread.TWO_WALLS, every, film -> scaled(film, 2), "Every layer reads twice, as two walls");
  }

  private static double[] scaled(double[] film, double factor) {
    return IntStream.range(0, film.length).mapToDouble(i -> factor * film[i]).toArray();
  }

  private static double[] reversed(double[] film) {
    return IntStream.range(0, film.length).mapToDouble(i -> film[film.length - 1 - i]).toArray();
  }

  @Override
  public double[] exportedNs(double[] filmNs, double[] readNs) {
    return exported.apply(filmNs);
  }

  @Override
  public double rarity() {
    return 1;
  }

  @Override
  public boolean isOfTheWholeSample() {
    return true;
  }
}
