package dev.filmward.gauge.echo;

import dev.filmward.film.Structure;
import dev.filmward.intake.StructuresFault;
import dev.filmward.intake.StructuresFile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Structures as people write them, for tests of gauges. */
public final class FilmOf {
  /** Polyethylene around a barrier, as reported when the ties are not told from their skins. */
  public static final String BARRIER =
      """
      structures:
        - code: BAR-80
          layers:
            - {name: Skin, role: skin, resin: LDPE, target: 25 um, velocity: 1950, density: 0.920}
            - {name: Outer tie, role: tie, resin: MAH-g-LLDPE, target: 4 um, velocity: 1980, density: 0.915}
            - {name: Barrier, role: barrier, resin: EVOH 32, target: 5 um, velocity: 2700, density: 1.180}
            - {name: Inner tie, role: tie, resin: MAH-g-LLDPE, target: 4 um, velocity: 1980, density: 0.915}
            - {name: Seal, role: seal, resin: LDPE, target: 42 um, velocity: 1950, density: 0.920}
      """;

  private FilmOf() {}

  /** The first structure of a file. */
  public static Structure yaml(String yaml) {
    try {
      return StructuresFile.read(
              new ByteArrayInputStream(yaml.getBytes(StandardCharsets.UTF_8)), "test.yaml")
          .all()
          .iterator()
          .next();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (StructuresFault e) {
      throw new IllegalArgumentException(e);
    }
  }

  /** The barrier film with its ties reported together with their neighbours. */
  public static Structure reportedAsThree() {
    return yaml(BARRIER + "    reported: [[Skin, Outer tie], [Barrier], [Inner tie, Seal]]\n");
  }

  /** One layer of LDPE. */
  public static Structure layer(String more) {
    return yaml(
        """
        structures:
          - code: ONE
            layers:
              - {name: Web, role: core, resin: LDPE, %s}
        """
            .formatted(more));
  }
}
