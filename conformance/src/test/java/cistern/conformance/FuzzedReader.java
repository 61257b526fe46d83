package cistern.conformance;

import java.nio.file.Path;
import java.util.Locale;

/** A reader of the exchange, as it is fuzzed. */
enum FuzzedReader {
  FHIR_JSON,
  FHIR_XML,
  HL7V2,
  CSV,
  SHEET,
  PRINTED,
  WORKUP;

  private static final Path FOLDER =
      Path.of("src", "test", "resources", "cistern", "conformance", "corpus").toAbsolutePath();

  /** Where the inputs lie that are replayed. */
  Path corpus() {
    return FOLDER.resolve(word());
  }

  /** The name of its folder. */
  String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The class that the fuzzer calls. */
  Class<?> target() {
    return this == SHEET ? SheetInput.class : AnyInput.class;
  }

  /** Reads one input as the fuzzer does. */
  void read(byte[] input) {
    if (this == SHEET) {
      SheetInput.fuzzerTestOneInput(input);
    } else {
      AnyInput.fuzzerTestOneInput(input);
    }
  }
}
