package cistern.cli;

import cistern.exchange.policy.PolicyFile;
import cistern.exchange.policy.PolicyReading;
import cistern.fact.Facts;
import cistern.gel.GelFacts;
import cistern.report.look.ReportFacts;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;

/** The facts that a command works with: the standard ones, changed by a local policy if given. */
final class FactsInForce {

  /** The tables of the program: read on another core while the command line is understood. */
  private static final CompletableFuture<Facts> STANDARD =
      CompletableFuture.supplyAsync(() -> ReportFacts.of(GelFacts.standard()));

  private FactsInForce() {}

  /** Begins to read the tables, without waiting for them. */
  static void readAhead() {
    STANDARD.isDone();
  }

  /** The facts, or nothing when the policy is not valid; its problems are then on the terminal. */
  static Optional<Facts> read(Optional<Path> policy, Terminal terminal) {
    Facts standard = STANDARD.join();
    return policy.isEmpty() ? Optional.of(standard) : changed(standard, policy.get(), terminal);
  }

  private static Optional<Facts> changed(Facts standard, Path policy, Terminal terminal) {
    return switch (PolicyFile.of(standard).read(policy)) {
      case PolicyReading.Understood understood -> Optional.of(standard.with(understood.policy()));
      case PolicyReading.NotValid notValid -> {
        notValid.problems().forEach(p -> terminal.say(policy.toString(), p));
        yield Optional.empty();
      }
    };
  }
}
