package dev.filmward.capability;

/**
 * How much film a line makes, as the kilograms an hour that a thickness of resin takes. Immutable.
 */
public sealed interface LineOutput permits LineOutput.Web, LineOutput.Mass {

  /**
   * Kilograms an hour in some of the mean thickness.
   *
   * @param um thickness in question, which may be negative
   * @param meanUm thickness that is made now
   */
  double kgPerHour(double um, double meanUm, double densityGcm3);

  /** From the trimmed width in metres and the speed in metres a minute. */
  record Web(double widthM, double speedMPerMin) implements LineOutput {
    private static final double MINUTES_PER_HOUR = 60;
    private static final double G_PER_KG = 1000;

    public Web {
      Positive.check("a width in m", widthM);
      Positive.check("a speed in m/min", speedMPerMin);
    }

    /** 1 um of 1 g/cm3 is 1 g/m2. */
    @Override
    public double kgPerHour(double um, double meanUm, double densityGcm3) {
      return um * densityGcm3 * widthM * speedMPerMin * MINUTES_PER_HOUR / G_PER_KG;
    }
  }

  /** From the output, of this layer's resin or of the whole film, at the thickness made now. */
  record Mass(double kgPerHour) implements LineOutput {
    public Mass {
      Positive.check("an output in kg/h", kgPerHour);
    }

    @Override
    public double kgPerHour(double um, double meanUm, double densityGcm3) {
      return kgPerHour * um / meanUm;
    }
  }
}
