package cistern.exchange.clinical;

import cistern.differential.Serology;
import cistern.exchange.json.Fields;
import cistern.interpretation.ClinicalPicture;
import cistern.measurement.Compartment;
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
    ClinicalPicture picture =
        evidence
            .map(
                fields ->
                    new ClinicalPicture(
                        EvidenceReader.read(fields), PriorReader.read(fields), List.of()))
            .orElse(ClinicalPicture.UNKNOWN);
    evidence.ifPresent(Fields::checkNoOthers);
    return new ClinicalPicture(picture.evidence(), picture.prior(), serology(workup));
  }

  private static List<Serology> serology(Fields workup) {
    List<Serology> all = new ArrayList<>();
    for (Fields fields : workup.objects("serology")) {
      fields.checkGiven("test", "result");
      Optional<String> test = fields.text("test");
      Compartment in = fields.word("in", Compartment::parse, codes()).orElse(Compartment.SERUM);
      Optional<Serology.Result> result = fields.word("result", Serology.Result::parse, words());
      fields.keep("at", "assay", "titre");
      fields.checkNoOthers();
      if (test.isPresent() && result.isPresent()) {
        all.add(new Serology(test.get(), in, result.get()));
      }
    }
    return all;
  }

  private static List<String> codes() {
    return Stream.of(Compartment.values()).map(Compartment::code).toList();
  }

  private static List<String> words() {
    return Stream.of(Serology.Result.values()).map(Serology.Result::word).toList();
  }
}
