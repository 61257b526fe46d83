package cistern.gel;

import cistern.bands.BandCounts;
import cistern.bands.BandPattern;
import cistern.bands.BandReading;
import cistern.bands.BandReport;
import cistern.bands.BandReport.Counted;
import cistern.bands.BandReport.GelNamed;
import cistern.bands.BandReport.ReadFromGel;
import cistern.fact.Facts;
import cistern.finding.Problem;
import cistern.gel.image.UnreadablePicture;
import cistern.gel.lanes.LanePlan;
import cistern.gel.reading.GelProblem;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.PairReading;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads the gel that a work-up names and keeps beside it what a person counted instead. */
public final class NamedGel {
  private final Facts facts;
  private final GelReader reader;

  /** A reader under some facts, which hold the reader's own table. */
  public NamedGel(Facts facts) {
    this.facts = facts;
    this.reader = new GelReader(facts);
  }

  /**
   * A gel as it enters a work-up.
   *
   * @param report the reading, or a person's counts with the reading that they edit
   * @param problems what is wrong with the pair
   */
  public record Read(BandReport report, List<Problem> problems) {
    /** Copies the problems. */
    public Read {
      problems = List.copyOf(problems);
    }
  }

  /** A gel that can't be read as named; the message is a sentence without its full stop. */
  public static final class NotRead extends IOException {
    private static final long serialVersionUID = 1L;
    private final String field;

    NotRead(String field, String sentence) {
      super(sentence);
      this.field = field;
    }

    /** The field of the bands that is at fault. */
    public String field() {
      return field;
    }
  }

  /** A problem of the pair, at the gel's place in the work-up. */
  private record PairTrouble(GelProblem seen) implements Problem {
    @Override
    public String code() {
      return seen.code().word();
    }

    @Override
    public String place() {
      return "bands.gel";
    }

    @Override
    public String text() {
      return "The gel's picture: " + seen.text() + ".";
    }
  }

  /**
   * The reading of a named gel.
   *
   * @param folder where the work-up lies
   */
  public Read read(GelNamed named, Path folder) throws NotRead {
    LanePlan plan = plan(named);
    boolean isInPlan = plan.pairs().stream().anyMatch(p -> p.number() == named.pair());
    if (!plan.isNone() && !isInPlan) {
      throw new NotRead("pair", "the lanes that are named hold no pair " + named.pair());
    }
    return read(named, reading(named, folder, plan));
  }

  /**
   * The reading of a named gel of which the picture was read before. What follows from the counts
   * is what the facts in force say now.
   */
  public Read read(GelNamed named, GelReading reading) {
    Optional<PairReading> pair =
        reading.pairs().stream().filter(p -> p.pair() == named.pair()).findFirst();
    List<GelProblem> seen =
        pair.map(PairReading::problems).orElse(List.of(missing(named, reading)));
    ReadFromGel read = fromGel(named, pair);
    BandReport report =
        named
            .edit()
            .<BandReport>map(
                e -> new Counted(e.counts(), e.pattern(), e.origin(), Optional.of(read)))
            .orElse(read);
    return new Read(report, seen.stream().<Problem>map(PairTrouble::new).toList());
  }

  private static GelProblem missing(GelNamed named, GelReading reading) {
    return new GelProblem(
        GelProblem.Code.LANE_MISSING,
        reading.lanes().size() + " lanes were found, and no pair " + named.pair() + " among them");
  }

  private static LanePlan plan(GelNamed named) throws NotRead {
    try {
      return named.lanes().isEmpty() ? LanePlan.NONE : LanePlan.parse(named.lanes());
    } catch (IllegalArgumentException e) {
      throw new NotRead(
          "lanes", "a lane is csf, serum, control or blank, with :NUMBER for its pair");
    }
  }

  private GelReading reading(GelNamed named, Path folder, LanePlan plan) throws NotRead {
    try {
      return reader.read(folder.resolve(named.file()), plan);
    } catch (UnreadablePicture e) {
      throw new NotRead("gel", String.valueOf(e.getMessage()));
    } catch (NoSuchFileException e) {
      throw new NotRead("gel", "there is no file of this name beside the work-up");
    } catch (IOException | InvalidPathException e) {
      throw new NotRead("gel", "the file cannot be opened");
    }
  }

  private ReadFromGel fromGel(GelNamed named, Optional<PairReading> pair) {
    Optional<PairReading.Counts> counts = pair.flatMap(PairReading::counts);
    BandCounts counted =
        counts
            .map(c -> BandCounts.of(c.csfOnly(), c.shared(), c.serumOnly()))
            .orElse(BandCounts.NONE);
    return new ReadFromGel(
        named.file(),
        counted,
        pair.flatMap(PairReading::pattern).flatMap(p -> pattern(p, counted)),
        counts.map(c -> OptionalDouble.of(positive(c))).orElse(OptionalDouble.empty()),
        counts.map(PairReading.Counts::csfOnlyDistribution).orElse(List.of()),
        named.confirmedBy());
  }

  /** A ladder is seen, the other patterns follow from the counts. */
  private Optional<BandPattern> pattern(BandPattern read, BandCounts counts) {
    return read == BandPattern.LADDER ? Optional.of(read) : BandReading.pattern(counts, cutOff());
  }

  private double positive(PairReading.Counts counts) {
    List<Double> chances = counts.csfOnlyDistribution();
    double sum = chances.stream().skip(cutOff()).mapToDouble(Double::doubleValue).sum();
    return Math.clamp(sum, 0, 1);
  }

  private int cutOff() {
    return (int) facts.number("bands.cut-off");
  }
}
