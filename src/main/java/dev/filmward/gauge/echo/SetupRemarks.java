package dev.filmward.gauge.echo;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** What a person should look at before believing the echoes of a set-up. Stateless. */
final class SetupRemarks {
  private SetupRemarks() {}

  /** What is wrong first, what is good to know last. */
  static List<Remark> of(Setup setup, List<ExpectedLayer> layers, List<ExpectedEcho> echoes) {
    List<Remark> remarks = new ArrayList<>();
    members(layers).forEach(member -> remarks.addAll(ResinQuestion.of(member)));
    echoes.forEach(echo -> BoundaryRemark.of(echo).ifPresent(remarks::add));
    remarks.addAll(ResolutionRemark.of(layers));
    remarks.addAll(GreatestCheck.of(layers));
    FrequencyRemark.of(setup.gauge().centreMhz(), layers).ifPresent(remarks::add);
    remarks.addAll(surroundings(setup));
    remarks.addAll(startingValues(layers));
    remarks.sort(Comparator.comparing(Remark::weight));
    return remarks;
  }

  private static List<Remark> surroundings(Setup setup) {
    List<Remark> remarks = new ArrayList<>();
    if (setup.backing().use() == Resin.Use.LIQUID) {
      remarks.add(
          Remark.look(
              Remark.GAUGE,
              "a liquid behind the film takes most of the back wall's echo; air returns all of it. Keep"
                  + " the far side dry."));
    }
    remarks.add(
        Remark.note(
            Remark.GAUGE,
            switch (setup.coupling()) {
              case CONTACT ->
                  "in contact the couplant before the film is in the zero of layer 1, so its thickness"
                      + " must not change; pressure squeezes soft film.";
              case IMMERSION ->
                  "in immersion the way through the couplant is in the zero and in no layer; bubbles lose"
                      + " the echo, and a tilted film weakens it.";
            }));
    return remarks;
  }

  private static List<Remark> startingValues(List<ExpectedLayer> layers) {
    String names =
        members(layers).stream()
            .filter(
                member ->
                    member.velocityOrigin() == Origin.STARTING_VALUE
                        || member.densityOrigin() == Origin.STARTING_VALUE)
            .map(member -> member.layer().name())
            .collect(Collectors.joining(", "));
    return names.isEmpty()
        ? List.of()
        : List.of(
            Remark.note(
                names,
                "velocity or density is a starting value of the resin's family, and tables differ by 5 to"
                    + " 10 %%: calibrate."));
  }

  private static List<LayerSound> members(List<ExpectedLayer> layers) {
    return layers.stream().flatMap(layer -> layer.members().stream()).toList();
  }
}
