package cistern.clinic.standing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import cistern.clinic.account.Chance;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.Clinic;
import cistern.clinic.cases.Held;
import cistern.clinic.gel.Gels;
import cistern.clinic.setting.Setting;
import cistern.clinic.standing.Summaries.Asked;
import cistern.clinic.standing.Summaries.Known;
import cistern.clinic.store.Engines;
import cistern.gel.GelFacts;
import cistern.report.look.ReportFacts;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Summaries of three hundred cases, whose reading a clock holds up. */
class SummariesTest {

  private static final int MANY = 300;
  private static final int FEW = 3;
  private static final Duration SHORT = Duration.ofMillis(50);
  private static final Duration LONG = Duration.ofMinutes(1);

  private final Held clock = new Held(Clinic.THEN);
  private final Clinic clinic = Clinic.open(Engines.folder());
  private final Summaries summaries =
      Summaries.of(
          new Medicine(
              new Rules(ReportFacts.of(GelFacts.standard()), ""),
              "a test",
              clock,
              ZoneOffset.UTC,
              Gels.of(clinic.store(), clinic.trail(), clock, Chance.of(new Random(5)))));

  @AfterEach
  void close() {
    clock.release();
    summaries.close();
    clinic.close();
  }

  private static List<Asked> cases(long number) {
    return IntStream.range(0, MANY)
        .mapToObj(i -> asked("case-" + i, number, "{\"workup\":1,\"id\":\"x-" + i + "\"}"))
        .toList();
  }

  private static Asked asked(String id, long number, String workup) {
    return new Asked(
        new CaseVersion(id, number, Clinic.THEN.toString(), "", "begun", workup),
        OptionalLong.empty());
  }

  @Test
  @Timeout(20)
  void known_ofManyCasesThatAreNotRead_saysHowManyAndReadsOn() {
    clock.hold();

    Known none = summaries.known(cases(1), SHORT);

    assertThat(none.unread()).isEqualTo(MANY);
    assertThat(none.summaries()).isEmpty();
    clock.release();
    Known first = summaries.known(cases(1).subList(0, FEW), LONG);
    assertThat(first.unread()).isZero();
    assertThat(first.summaries()).extracting(Summary::name).containsExactly("x-0", "x-1", "x-2");
  }

  @Test
  void known_ofCasesThatWereReadBefore_isThatUntilTheyAreReadAgain() {
    List<Asked> few = cases(1).subList(0, FEW);
    assertThat(summaries.known(few, LONG).unread()).isZero();
    clock.pass(Duration.ofMinutes(Setting.SUMMARY_MINUTES.number()));
    clock.hold();

    Known before = summaries.known(few, SHORT);

    assertThat(before.unread()).isEqualTo(FEW);
    assertThat(before.summaries()).hasSize(FEW);
    clock.release();
    assertThat(summaries.known(cases(2).subList(0, FEW), LONG).unread()).isZero();
  }

  @Test
  void known_whenAReadingFails_saysSoAndTriesAgain() {
    List<Asked> one = cases(1).subList(0, 1);
    clock.fail();
    assertThatThrownBy(() -> summaries.known(one, LONG)).isInstanceOf(IllegalStateException.class);
    clock.release();

    assertThat(summaries.known(one, LONG).unread()).isZero();
  }
}
