package dev.filmward.gauge.echo;

import java.util.Locale;
import java.util.Optional;

/** Whether a boundary is seen that should be, and not seen that should not. Stateless. */
final class BoundaryRemark {
  private BoundaryRemark() {}

  static Optional<Remark> of(ExpectedEcho echo) {
    boolean isToBeSeen = echo.place() != ExpectedEcho.Place.WITHIN;
    return switch (echo.sight()) {
      case UNKNOWN -> Optional.empty();
      case UNSEEN -> isToBeSeen ? remark(echo, "too weak to see" + remedy(echo)) : Optional.empty();
      case WEAK ->
          isToBeSeen ? remark(echo, "weak: it may be missed. Look at its echo.") : Optional.empty();
      case GOOD ->
          isToBeSeen
              ? Optional.empty()
              : remark(
                  echo,
                  "so the gauge sees it, but these layers are reported as one: one echo too many comes.");
    };
  }

  private static Optional<Remark> remark(ExpectedEcho echo, String words) {
    double size = Math.abs(echo.reflection().orElseThrow().coefficient());
    return Optional.of(
        Remark.look(echo.name(), "%s", String.format(Locale.ROOT, "|R| is %.3f, %s", size, words)));
  }

  private static String remedy(ExpectedEcho echo) {
    return switch (echo.place()) {
      case FRONT -> ": another couplant shows the front better.";
      case BACK -> ": keep the far side dry.";
      default -> ": report " + echo.before() + " + " + echo.behind() + " as one.";
    };
  }
}
