package cistern.panel;

import cistern.fact.Facts;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** Panels for tests from one line, {@code albumin.csf=220 kappa-flc.csf=<0.3}, canonical units. */
public final class PanelText {

  /** The draw of every panel made here, invented. */
  public static final OffsetDateTime DRAWN = OffsetDateTime.parse("2034-05-09T10:00:00Z");

  private static final Pattern SPACES = Pattern.compile(" +");

  private PanelText() {}

  /** A panel of a person of unknown age, CSF and serum drawn at the same time. */
  public static Panel parse(String results) {
    return of(Person.UNKNOWN, results, 0);
  }

  /** A panel of a person of some age. */
  public static Panel parse(double age, String results) {
    return of(Person.aged(age), results, 0);
  }

  /** A panel whose serum was drawn some hours after the CSF. */
  public static Panel of(Person person, String results, double hours) {
    List<Measurement> measurements =
        SPACES
            .splitAsStream(results.strip())
            .filter(cell -> !cell.isEmpty())
            .map(PanelText::measurement)
            .toList();
    Duration apart = Duration.ofMillis(Math.round(hours * 3_600_000));
    return Panel.of(person, measurements).withDraws(Draw.at(DRAWN), Draw.at(DRAWN.plus(apart)));
  }

  /** The same, checked under the standard facts. */
  public static CheckedPanel checked(double age, String results) {
    return CheckedPanel.check(parse(age, results), Facts.standard());
  }

  private static Measurement measurement(String cell) {
    int equals = cell.indexOf('=');
    String name = cell.substring(0, equals);
    int dot = name.lastIndexOf('.');
    Sample sample =
        new Sample(
            Analyte.parse(name.substring(0, dot)).orElseThrow(),
            Compartment.parse(name.substring(dot + 1)).orElseThrow());
    return new Measurement(
        sample,
        value(cell.substring(equals + 1)),
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty(),
        name);
  }

  private static Interval value(String text) {
    if (text.startsWith("<")) {
      return Interval.below(Double.parseDouble(text.substring(1)));
    }
    return text.startsWith(">")
        ? Interval.above(Double.parseDouble(text.substring(1)))
        : Interval.of(Double.parseDouble(text));
  }
}
