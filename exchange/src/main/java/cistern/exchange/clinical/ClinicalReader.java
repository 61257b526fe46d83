package cistern.exchange.clinical;

import cistern.bedside.Bedside;
import cistern.differential.Serology;
import cistern.exchange.json.Fields;
import cistern.measurement.Compartment;
import cistern.weighing.ClinicalPicture;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads the {@code evidence} and the {@code serology} of a work-up. */
public final class ClinicalReader {

  private ClinicalReader() {}

  /** What a whole work-up says; everything that is missing is unknown. */
  public static ClinicalPicture read(Fields workup) {
    Optional<Fields> evidence = workup.object("evidence");
    Bedside bedside = BedsideReader.read(workup, evidence);
    ClinicalPicture picture =
        evidence
            .map(
                fields ->
                    new ClinicalPicture(
                        EvidenceReader.read(fields), PriorReader.read(fields), List.of()))
            .orElse(ClinicalPicture.UNKNOWN);
    evidence.ifPresent(Fields::checkNoOthers);
    return new ClinicalPicture(picture.evidence(), picture.prior(), serology(workup), bedside);
  }

  private static List<Serology> serology(Fields workup) {
    List<Serology> all = new ArrayList<>();
    for (Fields fields : workup.objects("serology")) {
      fields.checkGiven("test", "result");
      Optional<String> test = fields.text("test");
      Compartment in = fields.word("in", Compartment::parse, codes()).orElse(Compartment.SERUM);
      Optional<Serology.Result> result = fields.word("result", Serology.Result::parse, words());
      Serology.Method method =
          fields.word("method", Serology.Method::parse, methods()).orElse(Serology.Method.UNKNOWN);
      Optional<String> titre = fields.text("titre");
      fields.time("at");
      fields.keep("assay");
      fields.checkNoOthers();
      if (test.isPresent() && result.isPresent()) {
        all.add(new Serology(test.get(), in, result.get(), method, titre));
      }
    }
    return all;
  }

  static List<String> codes() {
    return Stream.of(Compartment.values()).map(Compartment::code).toList();
  }

  private static List<String> methods() {
    return Stream.of(Serology.Method.values()).map(Serology.Method::word).toList();
  }

  private static List<String> words() {
    return Stream.of(Serology.Result.values()).map(Serology.Result::word).toList();
  }
}
