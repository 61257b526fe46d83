package cistern.report.figure;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Grounds;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.GuidelineAnswer;
import cistern.puncture.bleeding.HoldVerdict;
import cistern.puncture.bleeding.Hours;
import cistern.puncture.guideline.Guideline;
import cistern.puncture.procedure.Antithrombotic;
import cistern.puncture.procedure.DoseClass;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every time is computed by hand from an invented last dose. */
class HoldTimeLineTest {

  private static final OffsetDateTime DOSE = OffsetDateTime.parse("2031-02-28T08:00:00+01:00");

  private static GuidelineAnswer answer(String name, Optional<Hours> hold, Optional<Hours> next) {
    return new GuidelineAnswer(
        new Guideline(name, name, OptionalInt.of(2031), "invented"),
        hold,
        next,
        Optional.empty(),
        List.of(),
        List.of(),
        hold.isPresent(),
        HoldVerdict.ASK,
        "invented",
        Grounds.MEASURED);
  }

  private static AntithromboticPlan plan(
      Optional<OffsetDateTime> dose, OptionalDouble hours, GuidelineAnswer... answers) {
    Antithrombotic taken =
        new Antithrombotic(
            "apixaban", DoseClass.HIGH, dose, OptionalDouble.empty(), Antithrombotic.Level.UNKNOWN);
    return new AntithromboticPlan(taken, hours, List.of(answers), true);
  }

  private static final GuidelineAnswer SHORT =
      answer("Short", Optional.of(new Hours(24, 48)), Optional.of(new Hours(6, 6)));
  private static final GuidelineAnswer LONG =
      answer("Long", Optional.of(new Hours(72, 72)), Optional.empty());
  private static final GuidelineAnswer SILENT =
      answer("Silent", Optional.empty(), Optional.empty());

  private static Figure figure(Optional<OffsetDateTime> dose, OptionalDouble hours) {
    return HoldTimeLine.of(plan(dose, hours, SHORT, SILENT, LONG), "a").orElseThrow();
  }

  @Test
  void figure_withAKnownDose_givesTheEarliestPunctureOnTheClock() {
    Figure figure = figure(Optional.of(DOSE), OptionalDouble.of(50));

    assertThat(figure.title())
        .isEqualTo(
            "Apixaban, last dose 28 February 2031, 08:00 UTC+01:00: 2 sources give an interval; 50.0 h to"
                + " the planned puncture, by which 1 has passed");
    assertThat(figure.description())
        .contains("Puncture planned 2 March 2031, 10:00 UTC+01:00")
        .contains(
            "by it not before 1 March 2031, 08:00 UTC+01:00 to 2 March 2031, 08:00 UTC+01:00");
    assertThat(figure.table().rows())
        .extracting(r -> r.get(2))
        .containsExactly(
            "by it not before 1 March 2031, 08:00 UTC+01:00 to 2 March 2031, 08:00 UTC+01:00",
            "no clock time: no interval is given",
            "by it not before 3 March 2031, 08:00 UTC+01:00");
    assertThat(figure.toSvg().toText()).contains("puncture planned 2 Mar, 10:00");
  }

  @Test
  void figure_withoutATimeOfTheDose_saysSoAndGuessesNoClock() {
    Figure figure = figure(Optional.empty(), OptionalDouble.empty());

    String svg = figure.toSvg().toText();
    assertThat(figure.title())
        .contains("the time of the last dose is not known")
        .contains("the time from it to the puncture is not known");
    assertThat(svg)
        .contains("the time of the last dose is not known")
        .doesNotContain("puncture planned")
        .doesNotContain("20:00");
    assertThat(figure.table().rows())
        .allSatisfy(r -> assertThat(r.get(2)).startsWith("no clock time"));
  }

  @Test
  void figure_withOnlyHoursStated_drawsThePunctureWithoutAClock() {
    assertThat(figure(Optional.empty(), OptionalDouble.of(30)).toSvg().toText())
        .contains("puncture planned after 30.0 h");
  }

  @Test
  void bars_growWithTheHours() {
    Figure figure = figure(Optional.of(DOSE), OptionalDouble.of(50));

    List<Double> widths =
        Stream.of(figure.toSvg().toText().split("<rect", -1))
            .filter(r -> r.contains("f-blood\""))
            .map(r -> r.replaceAll("(?s).* width=\"([0-9.]+)\".*", "$1"))
            .map(Double::valueOf)
            .toList();

    // 24 h and 72 h on one linear scale.
    assertThat(widths).hasSize(2);
    assertThat(widths.get(1) / widths.get(0)).isBetween(2.98, 3.02);
  }

  @Test
  void figure_withoutAnyInterval_isNotDrawn() {
    assertThat(HoldTimeLine.of(plan(Optional.of(DOSE), OptionalDouble.of(50), SILENT), "a"))
        .isEmpty();
  }

  @Test
  void words_neverTellAnybodyToStopAMedicine() {
    Figure figure = figure(Optional.of(DOSE), OptionalDouble.of(50));

    assertThat(figure.title() + figure.description() + figure.toSvg().toText())
        .doesNotContainIgnoringCase("stop")
        .doesNotContainIgnoringCase("pause")
        .doesNotContainIgnoringCase("withhold")
        .doesNotContainIgnoringCase("safe");
  }
}
