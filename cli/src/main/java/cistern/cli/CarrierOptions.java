package cistern.cli;

import cistern.exchange.json.InputProblems;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.lab.MappingFile;
import cistern.fact.Facts;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;

/** What a person says about a laboratory's reports. */
final class CarrierOptions {

  @Spec(Target.MIXEE)
  private CommandSpec spec = CommandSpec.create();

  @Option(
      names = "--mapping",
      paramLabel = "FILE",
      description = "what local codes and headings mean, confirmed by a person")
  private @Nullable Path mapping;

  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      description = "zone of times without an offset, such as Europe/Berlin or +01:00")
  private @Nullable String zone;

  /** The mapping; nothing when it is not valid, and every reason is said. */
  Optional<LocalMapping> mapping(Facts facts, Terminal terminal) {
    Optional<ZoneId> named = Optional.ofNullable(zone).map(this::zone);
    if (mapping == null) {
      return Optional.of(named.map(LocalMapping.NONE::in).orElse(LocalMapping.NONE));
    }
    InputProblems problems = new InputProblems();
    Optional<LocalMapping> read = MappingFile.of(facts).read(mapping, problems);
    String file = mapping.toString();
    problems.invalid().forEach(problem -> terminal.say(file, problem));
    return read.map(m -> named.map(m::in).orElse(m));
  }

  private ZoneId zone(String name) {
    return MappingFile.zone(name)
        .orElseThrow(
            () ->
                new ParameterException(
                    spec.commandLine(), "No zone is called so: try Europe/Berlin or +01:00."));
  }
}
