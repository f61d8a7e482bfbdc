package dev.filmward.diagnosis;

import java.util.List;

/** What to look at first, nearest and cheapest first (common practice, no source). */
public final class FirstChecks {
  private static final List<String> ALL_LAYERS =
      List.of(
          "Compare the line speed log with the time of the first sample",
          "Measure the layflat width",
          "Compare the total output in kg/h with its set-point",
          "Read the check standard on the gauge");
  private static final List<String> SOME_LAYERS =
      List.of(
          "Compare the feeder's kg/h of this layer's extruder with its set-point",
          "Look at the melt pressure before the screen, over the last shift",
          "Look into the hopper: level, bridging, the right resin",
          "Read the same spot on the gauge again");
  private static final List<String> ACROSS_THE_WEB =
      List.of(
          "Look which lane is thin or thick, and whether it is the same in all layers",
          "Compare the lane with the die bolt map and the air ring",
          "Read the same lane again after cleaning the probe",
          "Look at the bubble or the melt curtain for a draught");

  private FirstChecks() {}

  /** First checks for a deviation of that shape. */
  public static List<String> of(Pattern pattern) {
    return switch (pattern) {
      case ALL_LAYERS -> ALL_LAYERS;
      case SOME_LAYERS -> SOME_LAYERS;
      case ACROSS_THE_WEB -> ACROSS_THE_WEB;
    };
  }
}
