package dev.filmward.diagnosis;

import java.util.List;
import java.util.stream.Stream;

/**
 * The signatures that Filmward comes with. Causes and checks are common practice, no source;
 * thresholds were chosen on simulated film and are proven by {@code DiagnosisProofTest}.
 */
final class BuiltInSignatures {
  static final List<Signature> ALL =
      Stream.of(
              LevelSignatures.all(),
              DriftSignatures.all(),
              TradeSignatures.all(),
              DisturbanceSignatures.all(),
              ProfileSignatures.all(),
              GaugeSignatures.all(),
              ScreeningSignatures.all())
          .flatMap(List::stream)
          .toList();

  private BuiltInSignatures() {}
}
