package cistern.report.wording;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Facts;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Expected clocks by hand: Berlin is two hours before UTC in May, one in March. */
class PrintedTimeTest {

  private static final OffsetDateTime MAY = OffsetDateTime.parse("2034-05-09T08:10:00Z");
  private static final OffsetDateTime MARCH = OffsetDateTime.parse("2034-03-02T23:30:00Z");

  private static PrintedTime in(String locale, String zone) {
    return new PrintedTime(Locale.forLanguageTag(locale), Optional.of(ZoneId.of(zone)));
  }

  @Test
  void at_byDefault_keepsTheZoneOfTheTime() {
    PrintedTime times = PrintedTime.of(Facts.standard());

    assertThat(times.at(MAY)).isEqualTo("9 May 2034, 08:10 UTC");
    assertThat(times.at(OffsetDateTime.parse("2034-05-09T10:10:00+02:00")))
        .isEqualTo("9 May 2034, 10:10 UTC+02:00");
  }

  @Test
  void at_inAZone_namesItAndMovesTheDay() {
    assertThat(in("en-GB", "Europe/Berlin").at(MAY)).isEqualTo("9 May 2034, 10:10 (Europe/Berlin)");
    assertThat(in("en-GB", "Europe/Berlin").at(MARCH))
        .isEqualTo("3 March 2034, 00:30 (Europe/Berlin)");
  }

  @Test
  void day_byLocale_ordersDayAndMonth() {
    assertThat(in("en-US", "UTC").day(MAY)).isEqualTo("May 9, 2034");
    assertThat(in("de-DE", "UTC").day(MAY)).isEqualTo("9. Mai 2034");
    assertThat(in("en-GB", "UTC").inShort(MAY)).isEqualTo("9 May, 08:10");
    assertThat(in("en-US", "UTC").inShort(MAY)).isEqualTo("May 9, 08:10");
  }

  @Test
  void like_aTimeWithoutAZoneChosen_bringsAllToItsOffset() {
    PrintedTime own =
        PrintedTime.AS_GIVEN.like(Optional.of(OffsetDateTime.parse("2034-05-09T10:10:00+02:00")));

    assertThat(own.at(MAY)).isEqualTo("9 May 2034, 10:10 UTC+02:00");
  }
}
