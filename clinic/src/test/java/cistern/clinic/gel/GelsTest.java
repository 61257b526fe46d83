package cistern.clinic.gel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import cistern.clinic.account.Chance;
import cistern.clinic.account.Role;
import cistern.clinic.cases.Clinic;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.store.Engines;
import cistern.clinic.store.Location;
import cistern.clinic.store.Store;
import cistern.clinic.store.StoreCopy;
import cistern.fact.Facts;
import cistern.gel.GelFacts;
import cistern.gel.GelReader;
import cistern.gel.lanes.LanePlan;
import cistern.gel.overlay.DensityCurve;
import cistern.gel.overlay.LaneWindow;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.BandMark;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class GelsTest {

  private static final Path PICTURE =
      Path.of(System.getProperty("cistern.root", ".."), "examples", "gel-local.png");
  private static final LanePlan PLAN = LanePlan.parse("csf,serum, csf,serum,control:3,control");
  private static final Facts FACTS = GelFacts.standard();

  private static Gels gels(Clinic clinic) {
    return Gels.of(
        clinic.store(),
        clinic.trail(),
        Clock.fixed(Clinic.THEN, ZoneOffset.UTC),
        Chance.of(new Random(3)));
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void picture_onBothEngines_isKeptOnceAndGoesIntoABackup(Location location) throws IOException {
    try (Clinic clinic = Clinic.open(location);
        Store copy = Store.open(Engines.folder())) {
      Gels gels = gels(clinic);
      Gels.Asker asker = new Gels.Asker(clinic.person(Role.CLINICIAN).id(), "a test", FACTS);
      byte[] bytes = Files.readAllBytes(PICTURE);

      KeptReading first = gels.add(bytes, PLAN, asker);

      assertThat(gels.add(bytes, PLAN, asker)).isEqualTo(first);
      assertThat(gels.add(bytes, LanePlan.NONE, asker)).isNotEqualTo(first);
      assertThat(first.lanes()).isEqualTo("csf,serum,csf,serum,control:3,control");
      assertThat(gels.bytes(first.picture()))
          .hasValueSatisfying(b -> assertThat(b).isEqualTo(bytes));
      StoreCopy.copy(clinic.store(), copy);
      assertThat(StoreVerification.check(copy).faults()).isEmpty();
      assertThat(
              copy.<Long>look(
                  s -> s.sql("select count(*) from gel_reading").query(Long.class).single()))
          .isEqualTo(2);
      assertThatThrownBy(
              () ->
                  clinic.store().change(s -> s.sql("update gel_reading set text = '{}'").update()))
          .hasStackTraceContaining("append-only");
      assertThatThrownBy(
              () -> clinic.store().change(s -> s.sql("delete from gel_picture").update()))
          .isInstanceOf(RuntimeException.class);
    }
  }

  @Test
  void check_ofAPictureThatWasExchanged_namesIt() throws IOException {
    try (Clinic clinic = Clinic.open(Engines.folder())) {
      Gels.Asker asker = new Gels.Asker(clinic.person(Role.CLINICIAN).id(), "a test", FACTS);
      KeptReading kept = gels(clinic).add(Files.readAllBytes(PICTURE), PLAN, asker);
      clinic.store().change(s -> s.sql("drop trigger gel_picture_no_update").update());
      clinic.store().change(s -> s.sql("update gel_picture set bytes = x'00'").update());

      assertThat(StoreVerification.check(clinic.store()).faults())
          .singleElement()
          .asString()
          .contains("gel/" + kept.picture());
    }
  }

  @Test
  void read_ofAKeptReading_isWhatTheReaderSaid() throws IOException {
    try (Clinic clinic = Clinic.open(Engines.folder())) {
      Gels.Asker asker = new Gels.Asker(clinic.person(Role.CLINICIAN).id(), "a test", FACTS);
      Gels gels = gels(clinic);
      byte[] bytes = Files.readAllBytes(PICTURE);
      KeptReading kept = gels.add(bytes, PLAN, asker);

      GelReading again =
          new GelReader(FACTS)
              .read(gels.picture(kept.picture(), FACTS).orElseThrow(), kept.picture(), PLAN);

      assertThat(Gels.read(kept, FACTS)).isEqualTo(again);
      assertThat(gels.reading("none")).isEmpty();
    }
  }

  /** The picture's pair 1 was drawn with thirteen bands in the fluid and none in the serum. */
  @Test
  void curves_ofAPair_riseAtTheBandsOfTheirLaneAndNotBesideThem() throws IOException {
    try (Clinic clinic = Clinic.open(Engines.folder())) {
      Gels.Asker asker = new Gels.Asker(clinic.person(Role.CLINICIAN).id(), "a test", FACTS);
      Gels gels = gels(clinic);
      KeptReading kept = gels.add(Files.readAllBytes(PICTURE), PLAN, asker);
      GelReading reading = Gels.read(kept, FACTS);
      List<LaneReading> lanes = List.of(reading.lanes().get(2), reading.lanes().get(3));
      LaneWindow window = LaneWindow.of(reading, lanes);

      List<DensityCurve> curves = gels.curves(kept, lanes, FACTS);

      List<Double> csf = curves.getFirst().od();
      List<Double> serum = curves.getLast().od();
      assertThat(csf).hasSize(window.height());
      for (BandMark band : lanes.getFirst().bands()) {
        int row = (int) Math.round(window.y(band));
        assertThat(csf.get(row)).as("a band at row " + row).isGreaterThan(0.1 + serum.get(row));
      }
      assertThat(lanes.getFirst().bands()).hasSize(13);
      assertThat(csf.getFirst()).as("above the bands").isLessThan(0.1 + serum.getFirst());
      assertThat(gels.curves(kept, lanes, FACTS)).as("held").isSameAs(curves);
    }
  }
}
