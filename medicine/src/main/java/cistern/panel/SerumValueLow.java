package cistern.panel;

import cistern.fact.Fact;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Printed;
import cistern.measurement.Analyte;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A serum value so low that the linear index misleads: low albumin hides synthesis, low IgG feigns
 * it.
 *
 * @param sample serum albumin or serum IgG
 * @param limit the lower limit, mg/L
 * @param place where the value stands
 * @param grounds what the limit rests on
 */
public record SerumValueLow(Sample sample, double limit, String place, Grounds grounds)
    implements PanelTrouble {

  private static final double MG_PER_G = 1000;

  static List<SerumValueLow> check(Panel panel, Set<Sample> suspected, Facts facts) {
    return Stream.of(Sample.serum(Analyte.ALBUMIN), Sample.serum(Analyte.IGG))
        .filter(sample -> !suspected.contains(sample))
        .flatMap(sample -> panel.find(sample).flatMap(m -> check(m, facts)).stream())
        .toList();
  }

  private static Optional<SerumValueLow> check(Measurement serum, Facts facts) {
    Fact fact = facts.fact("low." + serum.sample().code());
    double limit = facts.number(fact.key());
    boolean isLow =
        serum.value().isCensored()
            ? serum.value().interval().upper() <= limit
            : serum.value().interval().upper() < limit;
    return isLow
        ? Optional.of(new SerumValueLow(serum.sample(), limit, serum.place(), Grounds.of(fact)))
        : Optional.empty();
  }

  /** Whether it is the serum IgG. */
  public boolean isIgg() {
    return sample.analyte() == Analyte.IGG;
  }

  @Override
  public String code() {
    return isIgg() ? "serum-igg-low" : "serum-albumin-low";
  }

  @Override
  public String text() {
    String under =
        "%s is under %s g/L: ".formatted(sample.term(), Printed.significant(limit / MG_PER_G));
    return capital(under)
        + (isIgg()
            ? "the IgG index can be falsely high. Lean on the bands and on the quotient limit."
            : "the IgG index can be falsely normal. Lean on the bands and on the quotient limit.");
  }

  private static String capital(String sentence) {
    return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
  }
}
