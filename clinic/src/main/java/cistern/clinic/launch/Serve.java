package cistern.clinic.launch;

import cistern.clinic.account.Chance;
import cistern.clinic.status.RulesInForce;
import cistern.clinic.store.Store;
import cistern.clinic.web.Gateway;
import cistern.clinic.web.Network;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** Runs the clinic on a store that stays. */
@Command(
    name = "serve",
    description = {
      "Runs the clinic: SQLite in a folder, or PostgreSQL for many users. The first start prints a",
      "one-time code with which the first administrator makes an account."
    },
    footer = {"", "Example: cistern serve --port 8080 --data clinic"},
    mixinStandardHelpOptions = true)
final class Serve implements Callable<Integer> {

  private final Console console;

  @Mixin private WhichStore store = new WhichStore();

  @Mixin private WhichPolicy policy = new WhichPolicy();

  @Option(names = "--port", paramLabel = "PORT", description = "default 8080; 0 for any free one")
  private int port = Ports.USUAL;

  @Option(
      names = "--address",
      paramLabel = "ADDRESS",
      description = "where it listens (default 127.0.0.1: only this machine)")
  private String address = Ports.HERE;

  @Option(
      names = "--behind-https",
      description = {
        "a server that speaks HTTPS stands before this one, on this machine or as --proxy says:",
        "believe its X-Forwarded headers, and let nobody in but through it"
      })
  private boolean isBehindHttps;

  @Option(
      names = "--proxy",
      paramLabel = "ADDRESS",
      converter = Written.class,
      description = {
        "with --behind-https: the address of that server (10.0.0.5) or its network (10.0.0.0/24)",
        "when it is not on this machine; once for each server that the way leads through"
      })
  private List<Network> proxies = new ArrayList<>();

  @Spec private @Nullable CommandSpec spec;

  /** An address or a network as it is typed. */
  static final class Written implements ITypeConverter<Network> {
    @Override
    public Network convert(String text) {
      try {
        return Network.parse(text);
      } catch (IllegalArgumentException e) {
        throw new TypeConversionException(String.valueOf(e.getMessage()));
      }
    }
  }

  Serve(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    if (!proxies.isEmpty() && !isBehindHttps) {
      throw new ParameterException(
          Objects.requireNonNull(spec).commandLine(), "--proxy is said with --behind-https.");
    }
    Optional<RulesInForce> rules = policy.read(console);
    return rules.isEmpty() ? Clinic.NOT_VALID : call(rules.get());
  }

  private int call(RulesInForce rules) {
    Clock clock = Clock.systemUTC();
    try (ShutdownLatch stop = ShutdownLatch.listen();
        Store open = Store.open(store.location());
        WebClinic clinic =
            WebClinic.start(
                open,
                clock,
                Chance.of(new SecureRandom()),
                new WebClinic.Serving(address, port, false, rules, gateway()))) {
      String url = "http://" + address + ":" + clinic.port() + "/";
      console.say("Cistern clinic. For research and education, not a medical device.");
      console.say("  Address:       " + url);
      if (clinic.accounts().isEmpty()) {
        String code = clinic.codes().makeFirst();
        console.say("  Nobody has an account yet. The first administrator's one-time code:");
        console.say("  One-time code: " + code);
      }
      if (!address.equals(Ports.HERE) && !isBehindHttps) {
        console.say(
            "  Other machines can reach it: put a server that speaks HTTPS before it, and start"
                + " this one with --behind-https.");
      }
      if (!address.equals(Ports.HERE) && isBehindHttps && proxies.isEmpty()) {
        console.say("  Only a server on this machine is believed; --proxy names another one.");
      }
      console.say("Ctrl-C stops it.");
      stop.await();
    }
    return Clinic.DONE;
  }

  private Optional<Gateway> gateway() {
    return isBehindHttps ? Optional.of(Gateway.of(proxies)) : Optional.empty();
  }
}
