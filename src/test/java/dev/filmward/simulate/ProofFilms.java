package dev.filmward.simulate;

import dev.filmward.film.Role;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.simulate.MassBalanceLine.Film;
import java.util.List;

/** Three invented films of different make that diagnoses are proven on. */
public final class ProofFilms {
  private ProofFilms() {}

  /** Three layers of two extruders, all heard by themselves; five lanes. */
  public static Film shrink() {
    Structure structure =
        StructureDraft.of(
                "SHR-60",
                "Collation shrink film, 60 um",
                layer("Outer skin", Role.SKIN, "LDPE", 18).extruded("A", 0.923).heard(1950, 40),
                layer("Core", Role.CORE, "HDPE", 24).extruded("B", 0.955).heard(2430, 55),
                layer("Inner skin", Role.SEAL, "LDPE", 18).extruded("A", 0.923).heard(1950, 40))
            .reportedEach(SpecLimits.of(55.2, 60, 64.8));
    return new Film(structure, List.of(0.018, 0.017, 0.018), 5);
  }

  /** Five layers of five extruders; skin and tie are heard as one; five lanes. */
  public static Film pouch() {
    Structure structure =
        StructureDraft.of(
                "PCH-100",
                "Vacuum pouch film, 100 um",
                layer("Outer PE", Role.SKIN, "LDPE", 30).extruded("A", 0.923).heard(1950, 60),
                layer("Outer tie", Role.TIE, "MAH-g-LLDPE", 5).extruded("B", 0.915).heard(1980, 15),
                layer("PA core", Role.CORE, "PA6", 24).extruded("C", 1.135).heard(2650, 50),
                layer("Inner tie", Role.TIE, "MAH-g-LLDPE", 5).extruded("D", 0.915).heard(1980, 15),
                layer("Seal PE", Role.SEAL, "mLLDPE", 36).extruded("E", 0.918).heard(2000, 70))
            .reported(SpecLimits.of(90, 100, 110), List.of(2, 1, 2));
    return new Film(structure, List.of(0.018, 0.04, 0.022, 0.04, 0.018), 5);
  }

  /** Seven layers of five extruders, two of which feed two layers each; ten lanes. */
  public static Film lidding() {
    Structure structure =
        StructureDraft.of(
                "LID-60",
                "Barrier lidding film, 60 um",
                layer("Outer skin", Role.SKIN, "LDPE", 14).extruded("A", 0.922).heard(1950, 30),
                layer("Outer tie", Role.TIE, "MAH-g-LLDPE", 3).extruded("B", 0.915).heard(1980, 9),
                layer("Outer PA", Role.CORE, "PA6", 6).extruded("C", 1.13).heard(2650, 15),
                layer("Barrier", Role.BARRIER, "EVOH 32", 4).extruded("D", 1.18).heard(2700, 10),
                layer("Inner PA", Role.CORE, "PA6", 6).extruded("C", 1.13).heard(2650, 15),
                layer("Inner tie", Role.TIE, "MAH-g-LLDPE", 3).extruded("B", 0.915).heard(1980, 9),
                layer("Seal", Role.SEAL, "mLLDPE", 24).extruded("E", 0.916).heard(2000, 50))
            .reportedEach(SpecLimits.of(55, 60, 65));
    return new Film(structure, List.of(0.02, 0.045, 0.025, 0.028, 0.025, 0.045, 0.018), 10);
  }

  private static LayerDraft layer(String name, Role role, String resin, double targetUm) {
    return LayerDraft.of(name, role, resin).individual(targetUm * 0.8, targetUm, targetUm * 1.2);
  }
}
