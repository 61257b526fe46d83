package cistern.cli;

import cistern.exchange.deidentified.Deidentification;
import cistern.exchange.deidentified.Deidentified;
import cistern.exchange.deidentified.PersonGroups;
import cistern.exchange.deidentified.SiteSecret;
import cistern.exchange.json.InputProblems;
import cistern.exchange.workup.WorkupFile;
import cistern.exchange.workup.WorkupReading.NotValid;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Work-ups on their way out without what names their persons. Says on standard error what is left
 * out of each, by its place, and at the end how many persons the smallest group holds.
 */
final class DeidentifiedExport {

  private static final String SMALLEST = "cohort.smallest-group";

  private final Terminal terminal;
  private final Facts facts;
  private final Deidentification deidentification;
  private final PersonGroups groups;
  private final WorkupFile workups;
  private final Map<String, Integer> counts = new HashMap<>();

  DeidentifiedExport(Terminal terminal, Facts facts, SiteSecret secret) {
    this.terminal = terminal;
    this.facts = facts;
    this.deidentification = Deidentification.of(secret, facts);
    this.groups = PersonGroups.of(facts);
    this.workups = WorkupFile.of(facts);
  }

  /** The safe form of a work-up; nothing when there is none, and why is said. */
  Optional<Understood> safe(String input, Understood read) {
    int number = counts.merge(input, 1, Integer::sum);
    String which = input + ", work-up " + number;
    Deidentified safe = deidentification.of(read.document());
    return switch (workups.read(safe.document(), new InputProblems())) {
      case NotValid notValid -> {
        notValid.problems().forEach(problem -> terminal.say(which, problem));
        yield Optional.empty();
      }
      case Understood understood -> {
        say(which, safe);
        groups.add(safe.document());
        yield Optional.of(understood);
      }
    };
  }

  private void say(String which, Deidentified safe) {
    if (!safe.leftOut().isEmpty()) {
      terminal.err().println(which + ": left out: " + String.join(", ", safe.leftOut()) + ".");
    }
    if (!safe.hasPerson()) {
      terminal.err().println(which + ": no person.id, so that its dates are shifted for it alone.");
    }
  }

  /** Says how many persons share what anybody can see of them. */
  void sayGroups() {
    OptionalInt smallest = groups.smallest();
    if (smallest.isEmpty()) {
      return;
    }
    int least = (int) facts.number(SMALLEST);
    terminal
        .err()
        .printf(
            "Groups by age in steps of %.0f years, sex and year of the draw: %d. Persons in the"
                + " smallest: %d.%n",
            facts.number("deidentify.age.group"), groups.count(), smallest.getAsInt());
    if (groups.under(least) > 0) {
      terminal
          .err()
          .printf(
              "Warning: groups of fewer than %d persons: %d. By age, sex and year alone somebody may"
                  + " find them again; do not publish this as it is.%n",
              least, groups.under(least));
    }
  }
}
