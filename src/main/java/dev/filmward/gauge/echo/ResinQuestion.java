package dev.filmward.gauge.echo;

import java.util.ArrayList;
import java.util.List;

/** What has to be asked about a layer before its echoes can be told. Stateless. */
final class ResinQuestion {
  private ResinQuestion() {}

  static List<Remark> of(LayerSound member) {
    List<Remark> questions = new ArrayList<>();
    String name = member.layer().name();
    if (member.nominalUm().isEmpty()) {
      questions.add(
          Remark.look(
              name, "it has no target, so times cannot be told; give one in the structure."));
    }
    if (member.medium().isEmpty()) {
      String resin =
          member
              .layer()
              .resin()
              .map(text -> "resin \"" + text + "\" is not known here")
              .orElse("the structure names no resin");
      questions.add(
          Remark.look(
              name,
              "%s; give velocity (m/s) and density (g/cm3) of this grade in the structure. Ask its"
                  + " maker, or calibrate on a film of known thickness.",
              resin));
    }
    return questions;
  }
}
