package cistern.exchange.lab;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;

/** An age from a day of birth, as laboratories give it. */
final class Age {

  private static final int ADULT = 18;
  private static final double DAYS_A_YEAR = 365.25;

  private Age() {}

  /** Whole years from 18 on, with decimals below; empty when the birth lies behind the day. */
  static Optional<String> years(LocalDate birth, LocalDate day) {
    long whole = ChronoUnit.YEARS.between(birth, day);
    if (birth.isAfter(day)) {
      return Optional.empty();
    }
    if (whole >= ADULT) {
      return Optional.of(Long.toString(whole));
    }
    double more = ChronoUnit.DAYS.between(birth.plusYears(whole), day) / DAYS_A_YEAR;
    return Optional.of(String.format(Locale.ROOT, "%.4f", whole + more));
  }
}
