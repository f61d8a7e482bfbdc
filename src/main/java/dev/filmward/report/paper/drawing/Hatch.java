package dev.filmward.report.paper.drawing;

import dev.filmward.film.Role;
import java.util.Locale;

/**
 * Hatchings as SVG patterns, the same as on the screens: one a role, one for the land outside the
 * specification, one for what was held out. They differ in direction and density, not in colour.
 */
enum Hatch {
  SKIN(7, 7, "M-2 9 9 -2M-2 2 2 -2M5 9 9 5"),
  SEAL(7, 7, "M-2 -2 9 9M5 -2 9 2M-2 5 2 9"),
  CORE(9, 9, "M2 2.2H3.5M6.5 6.7H8"),
  TIE(5, 5, "M-1 6 6 -1M-1 -1 6 6"),
  BARRIER(6, 2.8, "M-1 1.4H7"),
  LAND(5, 5, "M-1 6 6 -1"),
  HELD_OUT(3, 3, "M-1 -1 4 4");

  private final double width;
  private final double height;
  private final String path;

  Hatch(double width, double height, String path) {
    this.width = width;
    this.height = height;
    this.path = path;
  }

  static Hatch of(Role role) {
    return switch (role) {
      case SKIN -> SKIN;
      case SEAL -> SEAL;
      case CORE -> CORE;
      case TIE -> TIE;
      case BARRIER -> BARRIER;
    };
  }

  String id() {
    return "hatch-" + name().toLowerCase(Locale.ROOT);
  }

  String pattern() {
    return String.format(
        Locale.ROOT,
        "<pattern id=\"%s\" width=\"%s\" height=\"%s\" patternUnits=\"userSpaceOnUse\">"
            + "<path d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"0.6\"/></pattern>",
        id(),
        width,
        height,
        path,
        Ink.HATCH.hex());
  }
}
