package cistern.gel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import cistern.bands.BandCounts;
import cistern.bands.BandPattern;
import cistern.bands.BandReport;
import cistern.bands.BandReport.Counted;
import cistern.bands.BandReport.GelNamed;
import cistern.bands.BandReport.Origin;
import cistern.bands.BandReport.ReadFromGel;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.fact.Policy.Change;
import cistern.finding.Problem;
import cistern.gel.lanes.LanePlan;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.LaneReading;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every expected number is the ground truth of an invented gel of {@code examples/}. */
class NamedGelTest {
  private static final Path EXAMPLES =
      Path.of(System.getProperty("cistern.root", ".."), "examples");
  private static final List<String> LANES =
      List.of("csf", "serum", "csf", "serum", "control", "control");
  private static final NamedGel GELS = new NamedGel(GelFacts.standard());

  private static GelNamed named(String file, List<String> lanes, int pair) {
    return new GelNamed(file, lanes, pair, Optional.empty(), Optional.empty());
  }

  @Test
  void read_aGel_bringsCountsAndProbability() throws NamedGel.NotRead {
    NamedGel.Read read = GELS.read(named("gel-mixed.png", LANES, 0), EXAMPLES);

    assertThat(read.problems()).isEmpty();
    ReadFromGel gel = (ReadFromGel) read.report();
    assertThat(gel.counts()).isEqualTo(BandCounts.of(7, 2, 0));
    assertThat(gel.pattern()).contains(BandPattern.LOCAL_AND_SYSTEMIC);
    assertThat(gel.probabilityPositive().orElseThrow()).isGreaterThan(0.99);
    assertThat(gel.csfOnlyDistribution()).hasSizeGreaterThan(7);
    assertThat(gel.confirmedBy()).isEmpty();
  }

  /** Where a person leaves a lane as it was found, its reading stays as it was. */
  @Test
  void read_withThePlacesOfTheLanesFound_isTheSameAndSaysThatTheyWereGiven() throws IOException {
    GelReader reader = new GelReader(GelFacts.standard());
    Path picture = EXAMPLES.resolve("gel-mixed.png");
    GelReading found = reader.read(picture, LanePlan.parse(LANES));
    List<String> places =
        found.lanes().stream()
            .map(
                l ->
                    "%s:%d@%.1f/%.1f"
                        .formatted(l.kind().word(), l.pair().orElse(9), l.xCentre(), l.width()))
            .toList();

    NamedGel.Read read = GELS.read(named("gel-mixed.png", places, 0), EXAMPLES);
    GelReading placed = reader.read(picture, LanePlan.parse(places));

    assertThat(((ReadFromGel) read.report()).counts()).isEqualTo(BandCounts.of(7, 2, 0));
    for (int i = 0; i < found.lanes().size(); i++) {
      LaneReading one = found.lanes().get(i);
      LaneReading other = placed.lanes().get(i);
      assertThat(other.isPlaced()).isTrue();
      assertThat(one.isPlaced()).isFalse();
      assertThat(other.xCentre()).isCloseTo(one.xCentre(), within(0.051));
      assertThat(other.slope()).isCloseTo(one.slope(), within(0.002));
      assertThat(other.bands()).hasSameSizeAs(one.bands());
    }
  }

  @Test
  void read_countsBesideTheGel_winAndTheReadingIsKept() throws NamedGel.NotRead {
    Counted edit =
        new Counted(BandCounts.of(5, 3, 0), Optional.empty(), Origin.UNKNOWN, Optional.empty());
    GelNamed named =
        new GelNamed("gel-mixed.png", LANES, 0, Optional.of("a reader"), Optional.of(edit));

    BandReport report = GELS.read(named, EXAMPLES).report();

    assertThat(report).isInstanceOf(Counted.class);
    assertThat(((Counted) report).counts()).isEqualTo(BandCounts.of(5, 3, 0));
    assertThat(((Counted) report).gel().orElseThrow().counts()).isEqualTo(BandCounts.of(7, 2, 0));
  }

  @Test
  void read_ofAKeptReading_followsTheCutOffInForce() throws IOException {
    GelReading kept =
        new GelReader(GelFacts.standard())
            .read(EXAMPLES.resolve("gel-mixed.png"), LanePlan.parse(LANES));
    Change higher = new Change(new FactValue.Figure(9), "an invented policy");
    Facts local =
        GelFacts.standard().with(new Policy("high cut-off", Map.of("bands.cut-off", higher)));

    ReadFromGel standard = (ReadFromGel) GELS.read(named("gel-mixed.png", LANES, 0), kept).report();
    ReadFromGel strict =
        (ReadFromGel) new NamedGel(local).read(named("gel-mixed.png", LANES, 0), kept).report();

    // Seven bands of the fluid alone: over two, under nine.
    assertThat(standard.pattern()).contains(BandPattern.LOCAL_AND_SYSTEMIC);
    assertThat(standard.probabilityPositive().orElseThrow()).isGreaterThan(0.99);
    assertThat(strict.counts()).isEqualTo(standard.counts());
    assertThat(strict.pattern()).contains(BandPattern.SYSTEMIC);
    assertThat(strict.probabilityPositive().orElseThrow()).isLessThan(0.5);
  }

  @Test
  void read_mispairedSerum_isAProblemWithItsPlace() throws NamedGel.NotRead {
    NamedGel.Read read = GELS.read(named("gel-mispaired.png", LANES, 0), EXAMPLES);

    assertThat(((ReadFromGel) read.report()).pattern()).isEmpty();
    assertThat(read.problems()).extracting(Problem::code).containsExactly("mispaired-serum");
    assertThat(read.problems().getFirst().place()).isEqualTo("bands.gel");
    assertThat(read.problems().getFirst().text()).contains("another person's serum");
  }

  @Test
  void read_fewerLanesThanThePairNeeds_isMissingWithoutCounts() throws NamedGel.NotRead {
    NamedGel.Read read = GELS.read(named("gel-mixed.png", List.of(), 9), EXAMPLES);

    ReadFromGel gel = (ReadFromGel) read.report();
    assertThat(gel.counts()).isEqualTo(BandCounts.NONE);
    assertThat(gel.probabilityPositive()).isEmpty();
    assertThat(read.problems()).extracting(Problem::code).containsExactly("lane-missing");
  }

  @Nested
  class NotReadable {
    @TempDir private Path folder;

    private void check(GelNamed named, String field, String words) {
      assertThatExceptionOfType(NamedGel.NotRead.class)
          .isThrownBy(() -> GELS.read(named, folder))
          .withMessageContaining(words)
          .extracting(NamedGel.NotRead::field, InstanceOfAssertFactories.STRING)
          .isEqualTo(field);
    }

    @Test
    void read_noSuchFile_saysSo() {
      check(named("none.png", LANES, 0), "gel", "no file of this name");
    }

    @Test
    void read_notAPicture_saysWhy() throws java.io.IOException {
      Files.writeString(folder.resolve("gel.png"), "not a picture");
      check(named("gel.png", LANES, 0), "gel", "neither a PNG");
    }

    @Test
    void read_aFolder_cannotBeOpened() throws java.io.IOException {
      Files.createDirectory(folder.resolve("gel"));
      check(named("gel", LANES, 0), "gel", "cannot be opened");
    }

    @Test
    void read_nameThatIsNoPath_cannotBeOpened() {
      check(named("gel\0.png", LANES, 0), "gel", "cannot be opened");
    }

    @Test
    void read_unknownKindOfLane_namesTheLanes() {
      check(named("none.png", List.of("csf", "plasma"), 0), "lanes", "csf, serum, control");
    }

    @Test
    void read_pairThatIsNotNamed_namesThePair() {
      check(named("none.png", LANES, 2), "pair", "no pair 2");
    }
  }
}
