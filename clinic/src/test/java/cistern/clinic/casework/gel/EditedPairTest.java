package cistern.clinic.casework.gel;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandCounts;
import cistern.exchange.json.Json;
import cistern.gel.lanes.LaneKind;
import cistern.gel.reading.KeptBands;
import cistern.gel.reading.KeptBands.Strike;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.BandMark;
import cistern.gel.reading.LaneReading.Quality;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Counts by hand over lanes 4 and 5: C1 alone, C2 with S1; S2 alone. */
class EditedPairTest {

  private static final OptionalInt ALONE = OptionalInt.empty();
  private static final LaneReading CSF = lane(4, LaneKind.CSF, ALONE, OptionalInt.of(0));
  private static final LaneReading SERUM = lane(5, LaneKind.SERUM, OptionalInt.of(1), ALONE);

  private static LaneReading lane(int index, LaneKind kind, OptionalInt... matched) {
    List<BandMark> bands =
        Arrays.stream(matched).map(m -> new BandMark(10, 2, 0.3, m, 0.9, "invented")).toList();
    return new LaneReading(
        index, kind, OptionalInt.of(2), 30, 20, 0, Quality.GOOD, List.of(), bands, false);
  }

  private static AddedBand csf(double y, OptionalInt matched) {
    return new AddedBand(4, y, matched, "somebody");
  }

  private static AddedBand serum(double y, OptionalInt matched) {
    return new AddedBand(5, y, matched, "somebody");
  }

  private static EditedPair pair(Set<Strike> struck, AddedBand... added) {
    return EditedPair.of(new KeptBands(CSF, SERUM, struck), List.of(added));
  }

  private static BandCounts counts(AddedBand... added) {
    return pair(Set.of(), added).bands().counts();
  }

  @Test
  void counts_withABandAddedAlone_holdOneMoreOfItsLane() {
    assertThat(counts()).isEqualTo(BandCounts.of(1, 1, 1));
    assertThat(counts(csf(20, ALONE))).isEqualTo(BandCounts.of(2, 1, 1));
    assertThat(counts(serum(20, ALONE))).isEqualTo(BandCounts.of(1, 1, 2));
    assertThat(counts(new AddedBand(3, 20, ALONE, "another person's"))).isEqualTo(counts());
  }

  @Test
  void counts_withAnAddedCounterpart_holdBothAsShared() {
    assertThat(counts(csf(20, OptionalInt.of(1)))).isEqualTo(BandCounts.of(1, 2, 0));
    assertThat(counts(serum(20, OptionalInt.of(0)))).isEqualTo(BandCounts.of(0, 2, 1));
    assertThat(counts(csf(20, OptionalInt.of(2)), serum(20, ALONE)))
        .isEqualTo(BandCounts.of(1, 2, 1));
    assertThat(counts(csf(20, OptionalInt.of(2)), serum(20, OptionalInt.of(2))))
        .isEqualTo(BandCounts.of(1, 2, 1));
  }

  @Test
  void counts_withACounterpartThatIsAnothersOrNone_holdTheAddedBandAlone() {
    EditedPair taken = pair(Set.of(), csf(20, OptionalInt.of(0)), csf(21, OptionalInt.of(9)));

    assertThat(taken.bands().counts()).isEqualTo(BandCounts.of(3, 1, 1));
    assertThat(taken.disputed()).containsExactly("C+1", "C+2");
    assertThat(pair(Set.of(), csf(20, OptionalInt.of(1))).disputed()).isEmpty();
    assertThat(pair(Set.of(new Strike(4, 1)), csf(20, OptionalInt.of(0))).bands().counts())
        .isEqualTo(BandCounts.of(1, 1, 1));
  }

  @Test
  void counts_withAnAddedBandStruck_areAsWithoutIt() {
    assertThat(pair(Set.of(new Strike(4, 2)), csf(20, OptionalInt.of(1))).bands().counts())
        .isEqualTo(BandCounts.of(1, 1, 1));
  }

  @Test
  void choices_areBandsThatStandAloneOrWhoseCounterpartIsStruck() {
    EditedPair pair = pair(Set.of(), csf(20, ALONE));
    LaneReading lane = pair.bands().csf();

    assertThat(pair.isChoice(lane, 2, 0)).isFalse();
    assertThat(pair.isChoice(lane, 2, 1)).isTrue();
    assertThat(pair.joins()).containsExactly(new EditedPair.Join(1, 0), new EditedPair.Join(2, 1));
    assertThat(pair.joins().stream().filter(pair::isShown))
        .containsExactly(new EditedPair.Join(1, 0));
    assertThat(pair(Set.of(new Strike(4, 1)), csf(20, ALONE)).isChoice(lane, 2, 0)).isTrue();
    assertThat(pair.name(lane, 1)).isEqualTo("C2");
    assertThat(pair.name(lane, 2)).isEqualTo("C+1");
  }

  @Test
  void withoutStruck_ofAddedBands_movesTheOthersUpWithTheirCounterparts() {
    EditedPair pair =
        pair(
            Set.of(new Strike(4, 0), new Strike(5, 2)),
            serum(20, ALONE),
            csf(30, OptionalInt.of(3)),
            serum(31, ALONE),
            csf(40, OptionalInt.of(2)));
    GelEdit edit = new GelEdit(Set.of(new Strike(4, 0), new Strike(5, 2)), pair.added(), false);

    GelEdit left = pair.withoutStruck(edit);

    assertThat(left.struck()).containsExactly(new Strike(4, 0));
    assertThat(left.added())
        .containsExactly(csf(30, OptionalInt.of(2)), serum(31, ALONE), csf(40, ALONE));
  }

  @Test
  void file_ofAnEdit_isReadAsItWasWritten() {
    GelEdit edit =
        new GelEdit(
            Set.of(new Strike(5, 0)),
            List.of(csf(412.25, OptionalInt.of(1)), serum(7, ALONE)),
            true);
    Map<String, Json> members = new LinkedHashMap<>();
    edit.toMembers().forEach((name, value) -> value.ifPresent(v -> members.put(name, v)));

    assertThat(GelEdit.of(new Json.Structure(new LinkedHashMap<>(members)), false)).isEqualTo(edit);
    assertThat(AddedBand.parse(new Json.Text("x"))).isEmpty();
    for (String wrong : List.of("1e999", "-4", "1e7")) {
      Map<String, Json> band = new LinkedHashMap<>();
      band.put("lane", new Json.Numeral("4"));
      band.put("y", new Json.Numeral(wrong));
      assertThat(AddedBand.parse(new Json.Structure(new LinkedHashMap<>(band)))).isEmpty();
    }
  }

  @Test
  void place_isTypedWithAPointOrAComma() {
    assertThat(LanePoint.parse("412,5")).hasValue(412.5);
    assertThat(LanePoint.parse("412.5")).hasValue(412.5);
    assertThat(LanePoint.parse("412 px")).isEmpty();
    assertThat(LanePoint.parse("1e3")).isEmpty();
    assertThat(LanePoint.number(412.999)).isEqualTo("413");
    assertThat(LanePoint.number(0.001)).isEqualTo("0");
  }
}
