package dev.filmward.diagnosis;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * The causes of a plant in the order of its list, retired ones too. Beside them a person may always
 * say that the cause is another one, or not found yet; these two are no part of the list.
 * Immutable.
 */
public record Causes(List<Cause> all) {
  /** More choices than these are not read but guessed at. Common practice, no source. */
  public static final int MOST_ACTIVE = 12;

  /** Another cause, in words. */
  public static final String OTHER = "other";

  public static final String NOT_FOUND_YET = "not-found-yet";

  /** After looking; an alarm may be closed with it. */
  public static final String NO_CAUSE_FOUND = "no-cause-found";

  private static final int MOST = 200;

  /** What holds until the plant has a list of its own (common practice, no source). */
  public static final Causes BUILT_IN =
      new Causes(
          List.of(
              Cause.active("haul-off-speed", "haul-off or winder speed changed"),
              Cause.active("layflat-width", "layflat width or blow-up ratio changed"),
              Cause.active("screen-blinded", "screen pack blinded"),
              Cause.active("screen-changed", "screen pack changed"),
              Cause.active("resin-lot", "resin lot or silo changed"),
              Cause.active("feeder-hopper", "feeder or hopper"),
              Cause.active("melt-temperature", "melt temperature or zone fault"),
              Cause.active("die-air-ring", "die bolt, lip or air ring"),
              Cause.active("start-up", "start-up or change-over"),
              Cause.active("gauge-misread", "gauge: misread or couplant"),
              Cause.active("gauge-calibration", "gauge: velocity or calibration"),
              Cause.active(NO_CAUSE_FOUND, "chance: no cause after looking")));

  public Causes {
    all = List.copyOf(all);
    long active = all.stream().filter(Cause::isActive).count();
    if (active == 0) {
      throw new IllegalArgumentException("at least one cause must be there to choose from");
    }
    if (active > MOST_ACTIVE) {
      throw new IllegalArgumentException(
          active + " causes to choose from are too many; retire some, at most 12 are shown");
    }
    if (all.size() > MOST) {
      throw new IllegalArgumentException("a list of causes has at most " + MOST);
    }
    checkNames(all);
  }

  private static void checkNames(List<Cause> all) {
    Set<String> taken = new HashSet<>(Set.of(OTHER, NOT_FOUND_YET));
    for (Cause cause : all) {
      if (!taken.add(cause.code())) {
        throw new IllegalArgumentException("the code \"" + cause.code() + "\" is taken");
      }
    }
    Set<String> words = new HashSet<>(Set.of(OTHER, NOT_FOUND_YET.replace('-', ' ')));
    for (Cause cause : all) {
      if (cause.isActive() && !words.add(cause.words().toLowerCase(Locale.ROOT))) {
        throw new IllegalArgumentException(
            "two causes to choose from cannot both be called \"" + cause.words() + "\"");
      }
    }
  }

  /** In the order of the list on the page. */
  public List<Cause> active() {
    return all.stream().filter(Cause::isActive).toList();
  }

  /** A cause by its code or, where it is active, by its words. */
  public Optional<Cause> find(String codeOrWords) {
    return all.stream()
        .filter(cause -> cause.code().equals(codeOrWords))
        .findFirst()
        .or(() -> active().stream().filter(cause -> cause.words().equals(codeOrWords)).findFirst());
  }

  /**
   * These causes, where they may take the place of others.
   *
   * @throws IllegalArgumentException if one of them is gone: alarms may have named it
   */
  public Causes inPlaceOf(Causes before) {
    for (Cause old : before.all) {
      if (all.stream().noneMatch(cause -> cause.code().equals(old.code()))) {
        throw new IllegalArgumentException(
            "the cause \"" + old.code() + "\" may be retired, but not removed: alarms may name it");
      }
    }
    return this;
  }
}
