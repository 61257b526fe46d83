package cistern.cli;

import cistern.fact.Facts;
import cistern.gel.GelReader;
import cistern.gel.image.Picture;
import cistern.gel.image.PictureFile;
import cistern.gel.image.UnreadablePicture;
import cistern.gel.lanes.LaneFile;
import cistern.gel.lanes.LanePlan;
import cistern.gel.overlay.OverlayFile;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.ReadingJson;
import cistern.gel.reading.ReadingText;
import cistern.gel.score.GelTruth;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Pictures of focusing gels in, band readings out. */
@Command(
    name = "read-gel",
    description = {
      "Reads pictures of focusing gels (PNG, JPEG, TIFF): lanes, bands, which bands CSF and serum",
      "share, which of the five patterns that is, and how sure. A person confirms every reading."
    },
    footer = {
      "",
      "Example: cistern read-gel examples/gel-local.png --lanes csf,serum,csf,serum,control"
          + " --overlay seen.png"
    },
    mixinStandardHelpOptions = true)
final class ReadGel implements Callable<Integer> {

  private final Terminal terminal;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(arity = "1..*", paramLabel = "IMAGE", description = "pictures; - is standard input")
  private List<String> images = List.of();

  @Option(
      names = "--lanes",
      paramLabel = "KINDS",
      description = {
        "the lanes from left to right (a gel on its side: from the top): csf, serum, control or",
        "blank, with commas between; csf:1,serum:1 when pairs are not neighbours"
      })
  private @Nullable String lanes;

  @Option(
      names = "--lane-file",
      paramLabel = "FILE",
      description = "kinds and places of the lanes, JSON; its places win over those found")
  private @Nullable Path laneFile;

  @Option(names = "--format", paramLabel = "FORMAT", description = "text (default) or json")
  private Format format = Format.TEXT;

  @Option(
      names = "--overlay",
      paramLabel = "FILE.png",
      description = "where the reading is drawn over the picture, cropped to its lanes")
  private @Nullable Path overlay;

  @Option(names = "--out", paramLabel = "FILE", description = "where the readings go")
  private @Nullable String out;

  @Option(
      names = "--against",
      paramLabel = "FILE",
      description = {
        "what is true of the gels in the folder IMAGE, JSON: reads them all and says how well that",
        "agrees"
      })
  private @Nullable Path against;

  @Option(names = "--policy", paramLabel = "FILE", description = "local policy, JSON")
  private @Nullable Path policy;

  /** How readings are written. */
  enum Format {
    TEXT,
    JSON
  }

  ReadGel(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    if (overlay != null && images.size() > 1) {
      throw new ParameterException(
          spec.commandLine(), "--overlay draws one picture: name one image with it.");
    }
    LanePlan named = named();
    Optional<Facts> facts = FactsInForce.read(Optional.ofNullable(policy), terminal);
    Optional<LanePlan> plan = facts.isEmpty() ? Optional.empty() : placed(named);
    if (facts.isEmpty() || plan.isEmpty()) {
      return ExitCode.INVALID_INPUT.number();
    }
    if (against != null) {
      return score(facts.get(), against).number();
    }
    List<GelReading> readings = readings(facts.get(), plan.get());
    if (!readings.isEmpty()) {
      write(readings);
    }
    boolean isAllValid = readings.size() == images.size();
    return (isAllValid ? ExitCode.DONE : ExitCode.INVALID_INPUT).number();
  }

  private ExitCode score(Facts facts, Path truth) {
    try {
      List<GelTruth> gels = new GelTruthFile(facts).read(truth);
      String text = new GelScoring(terminal, facts, Path.of(images.getFirst())).score(gels);
      terminal.out().write(text.getBytes(StandardCharsets.UTF_8));
      terminal.out().flush();
      return ExitCode.DONE;
    } catch (GelTruthFile.NotTruth e) {
      terminal.err().println(truth + ": " + e.getMessage() + ".");
    } catch (IOException | InvalidPathException e) {
      terminal.err().println(truth + ": the file cannot be read.");
    }
    return ExitCode.INVALID_INPUT;
  }

  private LanePlan named() {
    try {
      return lanes == null ? LanePlan.NONE : LanePlan.parse(lanes);
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), "--lanes: " + e.getMessage() + ".", e);
    }
  }

  /** The plan with the places of the lane file, if there is one; its problem is then said. */
  private Optional<LanePlan> placed(LanePlan named) {
    if (laneFile == null) {
      return Optional.of(named);
    }
    try {
      LanePlan placed = LaneFile.read(laneFile);
      return Optional.of(named.isNone() ? placed : named.withPlaces(placed));
    } catch (LaneFile.UnreadableLanes e) {
      terminal.err().println(laneFile + ": " + e.getMessage() + ".");
    } catch (IOException e) {
      terminal.err().println(laneFile + ": the file cannot be read.");
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage() + ".", e);
    }
    return Optional.empty();
  }

  private List<GelReading> readings(Facts facts, LanePlan plan) {
    PictureFile pictures = new PictureFile(facts);
    GelReader reader = new GelReader(facts);
    List<GelReading> readings = new ArrayList<>();
    for (String image : images) {
      picture(pictures, image)
          .ifPresent(
              picture -> {
                GelReading reading = reader.read(picture, name(image), plan);
                draw(picture, reading);
                readings.add(reading);
              });
    }
    return readings;
  }

  /** The picture of an input; nothing when it can't be read, and the reason is said. */
  private Optional<Picture> picture(PictureFile pictures, String image) {
    try {
      return Optional.of(
          image.equals(Terminal.STANDARD)
              ? pictures.read(terminal.in())
              : pictures.read(Path.of(image)));
    } catch (UnreadablePicture e) {
      say(image, String.valueOf(e.getMessage()));
    } catch (NoSuchFileException e) {
      say(image, "there is no file of this name");
    } catch (IOException | InvalidPathException e) {
      say(image, "the file cannot be opened");
    }
    return Optional.empty();
  }

  private void say(String image, String sentence) {
    terminal.err().println(name(image) + ": " + sentence + ".");
  }

  private static String name(String image) {
    return image.equals(Terminal.STANDARD) ? "standard input" : image;
  }

  private void draw(Picture picture, GelReading reading) {
    if (overlay != null) {
      try {
        OverlayFile.toPng(picture, reading, overlay);
      } catch (IOException e) {
        throw new NotWritten(overlay.toString(), e);
      }
    }
  }

  private void write(List<GelReading> readings) {
    String text =
        switch (format) {
          case TEXT -> ReadingText.toText(readings);
          case JSON -> ReadingJson.toJson(readings, images.size() > 1);
        };
    byte[] content = text.getBytes(StandardCharsets.UTF_8);
    Optional<String> file = Optional.ofNullable(out).filter(f -> !f.equals(Terminal.STANDARD));
    try {
      if (file.isPresent()) {
        WholeFile.write(Path.of(file.get()), content);
      } else {
        terminal.out().write(content);
        terminal.out().flush();
      }
    } catch (IOException e) {
      throw new NotWritten(file.orElse("The reading"), e);
    }
  }
}
