package cistern.statement;

import cistern.bedside.RuleReply;
import cistern.bedside.TreatmentKind;
import cistern.urgent.Alerts;
import cistern.urgent.Stop;
import cistern.urgent.Stop.Effect;
import cistern.urgent.Tier;
import cistern.urgent.Urgency;
import cistern.urgent.Urgency.State;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What is said before anything else: urgent rules, what to do, and what stops a verdict. */
final class FirstOfAll {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm", Locale.UK);

  /** Enough to ask for at once; the files hold all. */
  private static final int MOST_MISSING = 8;

  private FirstOfAll() {}

  /** What comes before the answer. */
  static List<Statement> before(Alerts alerts) {
    List<Statement> all = new ArrayList<>();
    alerts.urgent().open().forEach(u -> all.add(new UrgentStatement(u)));
    holding(alerts, u -> !u.isOpen() && u.tier() != Tier.T2).forEach(all::add);
    acts(alerts).ifPresent(all::add);
    unknown(alerts).ifPresent(all::add);
    stops(alerts, Effect.CONTRADICTION).forEach(all::add);
    return all;
  }

  /** What comes after the answer and before the criteria. */
  static List<Statement> after(Alerts alerts) {
    List<Statement> all = new ArrayList<>();
    holding(alerts, u -> u.tier() == Tier.T2).forEach(all::add);
    stops(alerts, Effect.INPUT_UNKNOWN).forEach(all::add);
    stops(alerts, Effect.EDITION_UNRESOLVED).forEach(all::add);
    stops(alerts, Effect.SENTENCE).forEach(all::add);
    return all;
  }

  private static List<Statement> holding(Alerts alerts, Predicate<Urgency> which) {
    return alerts.urgent().holding().stream()
        .filter(which)
        .<Statement>map(UrgentStatement::new)
        .toList();
  }

  private static List<Statement> stops(Alerts alerts, Effect effect) {
    return alerts.stops().stream()
        .filter(s -> s.effect() == effect && !isSaidOfTheDrug(s.code(), alerts))
        .map(FirstOfAll::said)
        .toList();
  }

  /** The sentence of each drug, with its name and date, says the same and more. */
  private static boolean isSaidOfTheDrug(String code, Alerts alerts) {
    return switch (code) {
      case "treated-before-sampling" -> true;
      case "immunoglobulin-given" -> alerts.treatments().containsKey(TreatmentKind.IMMUNOGLOBULIN);
      case "plasma-exchanged" -> alerts.treatments().containsKey(TreatmentKind.PLASMA_EXCHANGE);
      default -> false;
    };
  }

  private static Statement said(Stop stop) {
    return new Said(stop.code(), stop.text());
  }

  private static Optional<Statement> acts(Alerts alerts) {
    String acts =
        alerts.urgent().open().stream()
            .flatMap(u -> Stream.of(u.words().act().split("(?<=\\.) ", -1)))
            .distinct()
            .collect(Collectors.joining(" "));
    return acts.isEmpty() ? Optional.empty() : Optional.of(new Said(Said.ACT, "To do: " + acts));
  }

  private static Optional<Statement> unknown(Alerts alerts) {
    String missing =
        alerts.urgent().all().stream()
            .filter(u -> u.state() == State.UNKNOWN)
            .flatMap(u -> u.words().missing().stream())
            .distinct()
            .limit(MOST_MISSING)
            .collect(Collectors.joining(", "));
    return missing.isEmpty()
        ? Optional.empty()
        : Optional.of(new Said(Said.UNKNOWN, "Not known, and it matters here: " + missing + "."));
  }

  /** Who answered, when and why. */
  static String answered(RuleReply reply) {
    String at = reply.at().map(TIME::format).orElse("");
    return " Answered by %s, %s: %s.".formatted(reply.by(), at, reply.reason());
  }
}
