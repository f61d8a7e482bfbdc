package dev.filmward.report;

import dev.filmward.film.Characteristic;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The weekly capability report: every figure and fact that its forms say. Nothing in it needs a
 * database, so that a frozen one can be shown years later. Immutable.
 *
 * @param week such as 2026-W47, in {@code zone}, from {@code from} up to {@code to}
 * @param version of the program that made it
 * @param films by line, then structure
 * @param dataDigest SHA-256 of the week's readings as they were charted, in hexadecimal
 */
public record WeeklyReport(
    int format,
    String week,
    String zone,
    Instant from,
    Instant to,
    Instant madeAt,
    String version,
    Edition edition,
    Asked asked,
    List<FilmWeek> films,
    Intake intake,
    String dataDigest) {
  /** A later form of this value has another number. */
  public static final int FORMAT = 1;

  private static final int ACTS = 3;

  public WeeklyReport {
    films = List.copyOf(films);
  }

  /** For whom it is. */
  public enum Edition {
    INTERNAL,
    /** Without costs and names of people. */
    CUSTOMER
  }

  /** Files that came in the week: readings in quarantine belong to no line. */
  public record Intake(long files, long refused, long readings, long quarantined, long mended) {}

  /** What to do first in the whole plant. */
  public List<PlantAct> acts() {
    return films.stream()
        .flatMap(
            film ->
                film.acts().stream().map(act -> new PlantAct(film.line(), film.structure(), act)))
        .sorted(Comparator.comparing(found -> found.act().kind()))
        .limit(ACTS)
        .toList();
  }

  /** An act with where it is. */
  public record PlantAct(String line, String structure, FilmWeek.Act act) {}

  public long count(Verdict verdict) {
    return films.stream().filter(film -> film.verdict() == verdict).count();
  }

  /** Money given away in the week, by currency. */
  public List<CharacteristicWeek.Money> money() {
    return films.stream()
        .flatMap(film -> money(film).stream())
        .collect(
            Collectors.groupingBy(
                CharacteristicWeek.Money::currency, TreeMap::new, Collectors.toList()))
        .values()
        .stream()
        .map(WeeklyReport::sum)
        .toList();
  }

  /** Of its layers or, where none of them has a price, of the whole film; never of both. */
  private static List<CharacteristicWeek.Money> money(FilmWeek film) {
    List<CharacteristicWeek.Money> layers = money(film, Characteristic.Kind.LAYER);
    return layers.isEmpty() ? money(film, Characteristic.Kind.TOTAL) : layers;
  }

  private static List<CharacteristicWeek.Money> money(FilmWeek film, Characteristic.Kind kind) {
    return film.characteristics().stream()
        .filter(each -> each.kind() == kind)
        .flatMap(each -> each.giveaway().flatMap(CharacteristicWeek.GiveawayWeek::money).stream())
        .toList();
  }

  private static CharacteristicWeek.Money sum(List<CharacteristicWeek.Money> all) {
    double amount = all.stream().mapToDouble(CharacteristicWeek.Money::amount).sum();
    String asOf =
        all.stream()
            .map(CharacteristicWeek.Money::priceAsOf)
            .max(Comparator.naturalOrder())
            .orElse("");
    return new CharacteristicWeek.Money(amount, all.get(0).currency(), asOf);
  }

  /** What is known, whenever and by whichever version it was read. */
  WeeklyReport withoutMaking() {
    return new WeeklyReport(
        format, week, zone, from, to, to, "", edition, asked, films, intake, dataDigest);
  }

  /** The same for a customer: no costs, no names of people. */
  public WeeklyReport forCustomer() {
    return new WeeklyReport(
        format,
        week,
        zone,
        from,
        to,
        madeAt,
        version,
        Edition.CUSTOMER,
        asked,
        films.stream().map(CustomerEdition::of).toList(),
        intake,
        dataDigest);
  }
}
