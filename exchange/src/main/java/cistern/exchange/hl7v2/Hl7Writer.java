package cistern.exchange.hl7v2;

import cistern.exchange.lab.LoincCode;
import cistern.exchange.lab.SentFinding;
import cistern.exchange.lab.SentReport;
import cistern.exchange.lab.SentResult;
import cistern.exchange.lab.SentWorkup;
import cistern.measurement.Compartment;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Writes ORU^R01 of HL7 v2.5.1: an order for each fluid with its specimen, and one for what was
 * made of them. A limit is sent as SN, never as a number with a sign.
 */
public final class Hl7Writer {

  private static final Delimiters SIGNS = Delimiters.USUAL;
  private static final String LOINC_NAME = "LN";

  /** Signs of MSH-10 (HL7 v2.5.1, 2.15.9.10). */
  private static final int CONTROL_LENGTH = 20;

  private final SentReport report;
  private final SentWorkup workup;
  private final StringBuilder out = new StringBuilder();
  private int orders;
  private int observations;

  private Hl7Writer(SentReport report) {
    this.report = report;
    this.workup = report.workup();
  }

  /** The message of a report, its segments ended by carriage returns. */
  public static String write(SentReport report) {
    Hl7Writer writer = new Hl7Writer(report);
    writer.header();
    for (Compartment fluid : Compartment.values()) {
      List<SentResult> results = writer.workup.results(fluid);
      if (!results.isEmpty()) {
        writer.order(fluid, results);
      }
    }
    if (!report.findings().isEmpty()) {
      writer.interpretation();
    }
    return writer.out.toString();
  }

  private void header() {
    raw(
        "MSH|^~\\&|CISTERN|"
            + text(report.versions().software())
            + "|||"
            + time(workup.latest())
            + "||ORU^R01^ORU_R01|"
            + control()
            + (workup.isInvented() ? "|T" : "|P")
            + "|2.5.1||||||UNICODE UTF-8");
    String version = text(report.versions().software().replaceFirst("^Cistern ", ""));
    String facts = text(report.versions().facts());
    segment("SFT", "Cistern authors", version, "Cistern", version, facts);
    segment(
        "PID",
        "1",
        "",
        workup.text("person", "id").map(Hl7Writer::text).orElse(""),
        "",
        workup.text("person", "name").map(Hl7Writer::name).orElse(unnamed()),
        "",
        workup.birthDate().map(day -> day.replace("-", "")).orElse(""),
        sex());
  }

  /** The id, or a short name for one that is longer than MSH-10 may be; the same on every run. */
  private String control() {
    String id = workup.id();
    byte[] bytes = id.getBytes(StandardCharsets.UTF_8);
    return id.length() <= CONTROL_LENGTH
        ? id
        : UUID.nameUUIDFromBytes(bytes).toString().replace("-", "").substring(0, CONTROL_LENGTH);
  }

  /** HL70200: no name is known, or none is said so that the person stays unknown. */
  private String unnamed() {
    return workup.isDeidentified() ? "^^^^^^S" : "^^^^^^U";
  }

  private static String name(String name) {
    String[] parts = name.split(", ", 2);
    return text(parts[0]) + (parts.length > 1 ? "^" + text(parts[1]) : "");
  }

  private String sex() {
    return switch (workup.text("person", "sex").orElse("")) {
      case "female" -> "F";
      case "male" -> "M";
      case "" -> "U";
      default -> "O";
    };
  }

  private void order(Compartment fluid, List<SentResult> results) {
    Optional<OffsetDateTime> drawn = workup.time("draws", draw(fluid), "at");
    obr(fluid.code(), fluid.term() + " results", drawn);
    results.forEach(result -> result(result, drawn));
    String type =
        switch (fluid) {
          case CSF -> "CSF^Cerebral spinal fluid^HL70487";
          case SERUM -> "SER^Serum^HL70487";
          case BLOOD -> "BLD^Whole blood^HL70487";
        };
    String received = time(workup.time("draws", draw(fluid), "receivedAt"));
    segment(
        "SPM",
        "1",
        "",
        "",
        type,
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        time(drawn),
        received);
  }

  private static String draw(Compartment fluid) {
    return fluid == Compartment.CSF ? "csf" : "serum";
  }

  private void obr(String part, String name, Optional<OffsetDateTime> drawn) {
    orders++;
    observations = 0;
    String filler = workup.id() + (orders == 1 ? "" : "." + part);
    String[] fields = new String[25];
    Arrays.fill(fields, "");
    fields[0] = Integer.toString(orders);
    fields[2] = text(filler);
    fields[3] = part + "^" + text(name) + "^" + OrderGroup.ownSystem();
    fields[6] = time(drawn);
    fields[21] = time(workup.latest());
    fields[24] = "F";
    segment("OBR", fields);
  }

  private void result(SentResult result, Optional<OffsetDateTime> drawn) {
    String status =
        switch (result.beside().status()) {
          case "preliminary" -> "P";
          case "amended" -> "C";
          default -> "F";
        };
    Observation observation =
        new Observation(
            code(result.loinc(), result.code(), result.name()),
            result.isNumber() ? (result.sign().isEmpty() ? "NM" : "SN") : "ST",
            value(result.sign(), result.value(), result.isNumber()),
            unit(result.unit(), result.isUcum(workup.facts())),
            result.beside().range().orElse(""),
            "",
            status);
    obx(
        observation,
        time(drawn),
        result.beside().method().orElse(""),
        time(result.beside().measuredAt()));
    if (result.isNumber() && new BigDecimal(result.value()).scale() < 0) {
      segment("NTE", "1", "L", text(result.value()), OrderGroup.DIGITS);
    }
  }

  /** What one OBX holds. */
  private record Observation(
      String code,
      String type,
      String value,
      String unit,
      String range,
      String flag,
      String status) {}

  private void obx(Observation observation, String at, String method, String measuredAt) {
    observations++;
    segment(
        "OBX",
        Integer.toString(observations),
        observation.type(),
        observation.code(),
        "",
        observation.value(),
        observation.unit(),
        text(observation.range()),
        observation.flag(),
        "",
        "",
        observation.status(),
        "",
        "",
        at,
        "",
        "",
        method.isEmpty() ? "" : "^" + text(method),
        "",
        measuredAt);
  }

  private static String unit(String unit, boolean isUcum) {
    return unit.isEmpty() ? "" : text(unit) + (isUcum ? "^^UCUM" : "");
  }

  private static String value(String sign, String value, boolean isNumber) {
    if (!isNumber) {
      return text(value);
    }
    String plain = new BigDecimal(value).toPlainString();
    return sign.isEmpty() ? plain : sign + "^" + plain;
  }

  private static String code(Optional<LoincCode> loinc, String code, String name) {
    String own = text(code) + "^" + text(name) + "^" + OrderGroup.ownSystem();
    return loinc
        .map(l -> l.code() + "^" + text(l.name()) + "^" + LOINC_NAME + "^" + own)
        .orElse(own);
  }

  private void interpretation() {
    obr("interpretation", "interpretation", workup.latest());
    report.urgent().forEach(text -> said("urgent", text, "AA"));
    for (SentFinding finding : report.findings()) {
      finding(finding);
    }
    report.statements().forEach(text -> said("statement", text, ""));
    report
        .pdf()
        .ifPresent(
            pdf -> {
              String base64 = Base64.getEncoder().encodeToString(pdf);
              String code = code(Optional.empty(), "report", "report as PDF");
              obx(
                  new Observation(
                      code, "ED", "CISTERN^application^pdf^Base64^" + base64, "", "", "", "F"),
                  "",
                  "",
                  "");
            });
  }

  private void said(String code, String text, String flag) {
    String coded = code(Optional.empty(), code, code);
    obx(new Observation(coded, "TX", text(text), "", "", flag, "F"), "", "", "");
  }

  private void finding(SentFinding finding) {
    boolean hasValue = !finding.value().isEmpty();
    obx(
        new Observation(
            code(finding.loinc(), finding.code(), finding.code().replace('-', ' ')),
            hasValue ? (finding.sign().isEmpty() ? "NM" : "SN") : "ST",
            hasValue ? value(finding.sign(), finding.value(), true) : "undetermined",
            unit(hasValue ? finding.unit() : "", true),
            range(finding),
            finding.flag(),
            "F"),
        "",
        "",
        "");
    segment("NTE", "1", "L", text(finding.note()));
  }

  private static String range(SentFinding finding) {
    return finding
        .lower()
        .map(low -> finding.upper().map(high -> low + "-" + high).orElse(">=" + low))
        .or(() -> finding.upper().map(high -> "<=" + high))
        .orElse("");
  }

  private static String time(Optional<OffsetDateTime> time) {
    return time.map(Hl7Time::of).orElse("");
  }

  private static String text(String text) {
    return SIGNS.escaped(text);
  }

  private void segment(String name, String... fields) {
    raw(
        Stream.concat(Stream.of(name), Stream.of(fields))
            .collect(Collectors.joining("|"))
            .replaceFirst("\\|+$", ""));
  }

  private void raw(String segment) {
    out.append(segment).append('\r');
  }
}
