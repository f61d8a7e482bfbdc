package dev.filmward.diagnosis;

import java.util.List;

/** Causes that a person can choose from (common practice, no source). */
public final class Causes {
  private static final List<String> TO_CHOOSE_FROM =
      List.of(
          "haul-off or winder speed changed",
          "layflat width or blow-up ratio changed",
          "screen pack blinded",
          "screen pack changed",
          "resin lot or silo changed",
          "feeder or hopper",
          "melt temperature or zone fault",
          "die bolt, lip or air ring",
          "start-up or change-over",
          "gauge: misread or couplant",
          "gauge: velocity or calibration",
          "chance: no cause after looking");

  private Causes() {}

  /** In the order of the list on the page. */
  public static List<String> toChooseFrom() {
    return TO_CHOOSE_FROM;
  }
}
