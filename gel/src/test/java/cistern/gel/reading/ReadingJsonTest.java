package cistern.gel.reading;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandPattern;
import cistern.bands.BandVerdict;
import cistern.gel.image.Polarity;
import cistern.gel.image.Posture;
import cistern.gel.lanes.LaneKind;
import cistern.gel.reading.GelProblem.Code;
import cistern.gel.reading.GelReading.PictureSeen;
import cistern.gel.reading.LaneReading.BandMark;
import cistern.gel.reading.LaneReading.Quality;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class ReadingJsonTest {
  private static final GelProblem MARK = new GelProblem(Code.FAINT, "too little");

  private static GelReading reading(Posture posture, Polarity polarity) {
    BandMark band = new BandMark(412.5, 5.25, 0.5, OptionalInt.of(0), 0.75, "seen");
    LaneReading lane =
        new LaneReading(
            0,
            LaneKind.CSF,
            OptionalInt.of(0),
            130.5,
            62,
            0,
            Quality.GOOD,
            List.of(),
            List.of(band),
            false);
    return new GelReading(
        new PictureSeen("g.png", 1500, 1000, polarity, posture),
        List.of(lane),
        List.of(read(), lonely()),
        List.of(MARK));
  }

  private static PairReading read() {
    PairReading.Counts counts =
        new PairReading.Counts(
            2, 1, 0, List.of(0.0, 0.25, 0.75), 0.75, List.of(0.1, 0.2, 0.3, 0.2, 0.2));
    return new PairReading(
        0,
        OptionalInt.of(0),
        OptionalInt.of(1),
        Optional.of(counts),
        Optional.of(BandPattern.LOCAL_AND_SYSTEMIC),
        BandVerdict.POSITIVE,
        List.of("one band decides"),
        List.of());
  }

  private static PairReading lonely() {
    return new PairReading(
        1,
        OptionalInt.empty(),
        OptionalInt.of(2),
        Optional.empty(),
        Optional.empty(),
        BandVerdict.UNDETERMINED,
        List.of("too little"),
        List.of(MARK));
  }

  @Test
  void toJson_oneReading_isOneObjectWithEveryField() {
    String json =
        ReadingJson.toJson(List.of(reading(Posture.UPRIGHT, Polarity.DARK_ON_LIGHT)), false);
    assertThat(json)
        .startsWith("{\"reading\":1,\"image\":{\"file\":\"g.png\",\"width\":1500,\"height\":1000,")
        .contains("\"polarity\":\"dark-on-light\",\"lanes\":\"upright\"")
        .contains("\"xCentre\":130.5,\"width\":62.0,\"quality\":\"good\",\"problems\":[]")
        .contains(
            "{\"y\":412.5,\"height\":5.25,\"strength\":0.5,\"matched\":0,\"probability\":0.75")
        .contains("\"csfOnly\":2,\"shared\":1,\"serumOnly\":0")
        .contains("\"csfOnlyDistribution\":[0.0,0.25,0.75]")
        .contains("\"pattern\":3,\"verdict\":\"positive\",\"needsReview\":true")
        .contains("\"csfLane\":null,\"serumLane\":2,\"csfOnly\":null")
        .contains("\"probabilityPositive\":null,\"pattern\":null,\"verdict\":\"undetermined\"")
        .endsWith("\"problems\":[{\"code\":\"faint\",\"text\":\"too little\"}]}\n");
  }

  @Test
  void toJson_twoReadings_isAnArray() {
    GelReading r = reading(Posture.ACROSS, Polarity.LIGHT_ON_DARK);
    assertThat(ReadingJson.toJson(List.of(r, r), true))
        .startsWith("[{")
        .endsWith("}]\n")
        .contains("\"polarity\":\"light-on-dark\",\"lanes\":\"across\"");
  }

  @Test
  void toText_reading_saysCountsAndDoubt() {
    String text = ReadingText.toText(List.of(reading(Posture.UPRIGHT, Polarity.DARK_ON_LIGHT)));
    assertThat(text)
        .contains("Pair 0: positive; pattern 3, shared bands and more in the CSF.")
        .contains("2 bands only in the CSF, 1 shared, 0 only in the serum")
        .contains("75 chances in 100")
        .contains("Pair 1: undetermined; no pattern is given.")
        .contains("Look at the gel before you use this: one band decides.")
        .contains("The gel: too little.");
  }
}
