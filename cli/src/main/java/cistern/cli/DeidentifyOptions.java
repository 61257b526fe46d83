package cistern.cli;

import cistern.exchange.deidentified.SiteSecret;
import cistern.exchange.json.InputProblems;
import cistern.fact.Facts;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;

/** Whether what names a person is left out. The secret comes from a file, never from the line. */
final class DeidentifyOptions {

  @Spec(Target.MIXEE)
  private CommandSpec spec = CommandSpec.create();

  @Option(
      names = "--de-identify",
      description = "leaves out what names a person; shifts dates; needs --site-secret")
  private boolean isAsked;

  @Option(
      names = "--site-secret",
      paramLabel = "FILE",
      description = "with --de-identify: the secret that pseudonyms and shifts are made with")
  private @Nullable Path file;

  /** Whether it is asked for; says what is wrong with the command line. */
  boolean isAsked() {
    if (isAsked && file == null) {
      throw new ParameterException(
          spec.commandLine(),
          "--de-identify needs --site-secret FILE. Make one, and keep it where only you can read"
              + " it: umask 077; openssl rand -hex 32 > site.secret");
    }
    if (!isAsked && file != null) {
      throw new ParameterException(spec.commandLine(), "--site-secret needs --de-identify.");
    }
    return isAsked;
  }

  /** The secret; nothing when it is not one, and why is said. */
  Optional<SiteSecret> secret(Facts facts, Terminal terminal) {
    if (file == null) {
      return Optional.empty();
    }
    String name = file.toString();
    InputProblems problems = new InputProblems();
    Optional<SiteSecret> secret = SiteSecret.read(file, facts, problems);
    problems.invalid().forEach(problem -> terminal.say(name, problem));
    if (secret.isPresent() && isOpen(file)) {
      terminal.err().println(name + ": others can read this file; chmod 600 closes it.");
    }
    return secret;
  }

  private static boolean isOpen(Path file) {
    try {
      Set<PosixFilePermission> allowed = Files.getPosixFilePermissions(file);
      return allowed.contains(PosixFilePermission.OTHERS_READ)
          || allowed.contains(PosixFilePermission.GROUP_READ);
    } catch (IOException | UnsupportedOperationException notOfThisSystem) {
      return false;
    }
  }
}
