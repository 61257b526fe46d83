package cistern.exchange.lab;

import cistern.exchange.json.Json;
import cistern.exchange.lab.LeftOver.Why;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;

/**
 * What a report says of the bands, as a work-up writes it. Bands in CSF and bands in serum, counted
 * apart, say which are shared only when one of the counts is 0.
 */
final class BandSpellings {

  private static final List<String> COUNTS = List.of("csfOnly", "shared", "serumOnly", "pattern");

  private final SequencedMap<String, Json> bands = new LinkedHashMap<>();
  private final Map<String, ReadResult> said;
  private final List<LeftOver> leftOver;

  private BandSpellings(Map<String, ReadResult> said, List<LeftOver> leftOver) {
    this.said = said;
    this.leftOver = leftOver;
  }

  /** The bands of some results by their keys; empty when nothing is said. */
  static Optional<Json.Structure> of(Map<String, ReadResult> said, List<LeftOver> leftOver) {
    return new BandSpellings(said, leftOver).write();
  }

  private Optional<Json.Structure> write() {
    for (String count : COUNTS) {
      find(count).ifPresent(u -> bands.put(count, new Json.Numeral(u.word())));
    }
    Optional<ReadResult> csf = find("inCsf");
    Optional<ReadResult> serum = find("inSerum");
    if (bands.isEmpty() && csf.isPresent() && serum.isPresent() && isZero(csf, serum)) {
      bands.put("csfOnly", new Json.Numeral(csf.get().word()));
      bands.put("shared", new Json.Numeral("0"));
      bands.put("serumOnly", new Json.Numeral(serum.get().word()));
    } else {
      csf.ifPresent(u -> leftOver.add(LeftOver.of(u.from(), Why.VALUE_UNCLEAR)));
      serum.ifPresent(u -> leftOver.add(LeftOver.of(u.from(), Why.VALUE_UNCLEAR)));
    }
    find("result").ifPresent(u -> bands.put("result", new Json.Text(u.word())));
    said.values().stream()
        .filter(u -> u.subject().startsWith("bands."))
        .flatMap(u -> u.from().remarks().method().stream())
        .findFirst()
        .ifPresent(method -> bands.put("method", new Json.Text(method)));
    return bands.isEmpty() ? Optional.empty() : Optional.of(new Json.Structure(bands));
  }

  private static boolean isZero(Optional<ReadResult> csf, Optional<ReadResult> serum) {
    return csf.filter(u -> u.word().matches("0+")).isPresent()
        || serum.filter(u -> u.word().matches("0+")).isPresent();
  }

  private Optional<ReadResult> find(String name) {
    return Optional.ofNullable(said.get("bands." + name));
  }
}
