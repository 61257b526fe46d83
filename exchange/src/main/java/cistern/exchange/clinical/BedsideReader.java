package cistern.exchange.clinical;

import cistern.bedside.Bedside;
import cistern.bedside.MicrobeTest;
import cistern.bedside.RuleReply;
import cistern.bedside.Sign;
import cistern.bedside.Syndrome;
import cistern.bedside.Treatment;
import cistern.exchange.json.Fields;
import cistern.exchange.json.InputTrouble;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads signs, syndromes, microbiology, treatments and the answers to urgent rules. */
final class BedsideReader {

  private static final List<String> SYNDROMES =
      Stream.of(Syndrome.values()).map(Syndrome::code).toList();
  private static final List<String> RESULTS =
      Stream.of(MicrobeTest.Result.values()).map(MicrobeTest.Result::word).toList();

  private BedsideReader() {}

  static Bedside read(Fields workup, Optional<Fields> evidence) {
    Map<Sign, Answer> signs = new EnumMap<>(Sign.class);
    evidence.ifPresent(fields -> signs(fields, signs));
    return new Bedside(
        signs,
        evidence.map(BedsideReader::attack).orElse(Bedside.Attack.UNKNOWN),
        microbes(workup),
        treatments(workup),
        replies(workup));
  }

  private static void signs(Fields fields, Map<Sign, Answer> signs) {
    for (Sign sign : Sign.values()) {
      if (fields.isGiven(sign.code())) {
        signs.put(sign, fields.answer(sign.code()));
      }
    }
  }

  private static Bedside.Attack attack(Fields fields) {
    List<String> texts = fields.texts("syndromes");
    List<Syndrome> syndromes =
        texts.stream().map(Syndrome::parse).flatMap(Optional::stream).toList();
    if (syndromes.size() < texts.size()) {
      fields.add("syndromes", InputTrouble.NOT_A_WORD, String.join(", ", SYNDROMES));
    }
    return new Bedside.Attack(syndromes, fields.texts("supportingSigns"), fields.time("onsetAt"));
  }

  private static List<MicrobeTest> microbes(Fields workup) {
    List<MicrobeTest> all = new ArrayList<>();
    for (Fields fields : workup.objects("microbiology")) {
      fields.checkGiven("test", "result");
      Optional<String> test = fields.text("test");
      Optional<String> target = fields.text("target");
      Compartment in =
          fields.word("in", Compartment::parse, ClinicalReader.codes()).orElse(Compartment.CSF);
      Optional<MicrobeTest.Result> result =
          fields.word("result", MicrobeTest.Result::parse, RESULTS);
      Optional<OffsetDateTime> at = fields.time("at");
      fields.checkNoOthers();
      if (test.isPresent() && result.isPresent()) {
        all.add(new MicrobeTest(test.get(), target, in, result.get(), at));
      }
    }
    return all;
  }

  private static List<Treatment> treatments(Fields workup) {
    List<Treatment> all = new ArrayList<>();
    for (Fields fields : workup.objects("treatments")) {
      fields.checkGiven("drug");
      Optional<String> drug = fields.text("drug");
      Optional<OffsetDateTime> from = fields.time("from");
      Optional<OffsetDateTime> to = fields.time("to");
      fields.checkNoOthers();
      drug.filter(d -> !d.isBlank()).ifPresent(d -> all.add(new Treatment(d, from, to)));
    }
    return all;
  }

  private static List<RuleReply> replies(Fields workup) {
    List<RuleReply> all = new ArrayList<>();
    for (Fields fields : workup.objects("answers")) {
      fields.checkGiven("to");
      Optional<String> to = fields.text("to");
      String by = fields.text("by").orElse("");
      Optional<OffsetDateTime> at = fields.time("at");
      String reason = fields.text("reason").orElse("");
      fields.checkNoOthers();
      to.ifPresent(code -> add(new RuleReply(code, by, at, reason), fields, all));
    }
    return all;
  }

  private static void add(RuleReply reply, Fields fields, List<RuleReply> all) {
    all.add(reply);
    if (!reply.isComplete()) {
      fields.problems().add(new AnswerIncomplete(fields.place().path()));
    }
  }
}
