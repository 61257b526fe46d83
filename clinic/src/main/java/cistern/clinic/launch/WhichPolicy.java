package cistern.clinic.launch;

import cistern.clinic.audit.Digest;
import cistern.clinic.setting.Setting;
import cistern.clinic.status.RulesInForce;
import cistern.exchange.policy.PolicyFile;
import cistern.exchange.policy.PolicyReading;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.gel.GelFacts;
import cistern.report.look.ReportFacts;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The option that names a local policy. */
final class WhichPolicy {

  /** How much of a policy's digest is shown beside its name: enough to tell two files apart. */
  private static final int SHOWN = 12;

  @Option(
      names = "--policy",
      paramLabel = "FILE",
      description = "local policy, JSON, as interpret takes it: it holds for every case")
  private @Nullable Path policy;

  /** The rules in force, or nothing when the policy is not valid; the console then says why. */
  Optional<RulesInForce> read(Console console) {
    Facts standard = ReportFacts.of(GelFacts.standard());
    return policy == null
        ? Optional.of(new RulesInForce(standard, ""))
        : read(policy, standard, console);
  }

  private static Optional<RulesInForce> read(Path file, Facts standard, Console console) {
    byte[] bytes = bytes(file);
    PolicyReading reading =
        bytes.length == 0
            ? PolicyFile.of(standard).read(file)
            : PolicyFile.of(standard).read(new ByteArrayInputStream(bytes));
    return switch (reading) {
      case PolicyReading.Understood understood -> Optional.of(rules(standard, understood, bytes));
      case PolicyReading.NotValid notValid -> {
        notValid.problems().forEach(p -> console.err().println(file + ": " + p.toText()));
        yield Optional.empty();
      }
    };
  }

  /** What is in the file; nothing when it cannot be read, which its reader then says in words. */
  private static byte[] bytes(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes(Setting.UPLOAD_BYTES.number());
    } catch (IOException e) {
      return new byte[0];
    }
  }

  /** A policy has no version of its own: its file's digest tells it from another of its name. */
  private static RulesInForce rules(
      Facts standard, PolicyReading.Understood understood, byte[] bytes) {
    Policy read = understood.policy();
    String digest = Digest.sha256(bytes).substring(0, SHOWN);
    Policy named = new Policy(read.name() + " (file " + digest + ")", read.changes());
    return new RulesInForce(standard.with(named), new String(bytes, StandardCharsets.UTF_8));
  }
}
