package cistern.clinic.launch;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** One invented panel in each carrier: every value with its code, its fluid and its unit. */
enum DroppedPanel {
  HL7("hl7"),
  FHIR("json"),
  CSV("csv"),
  XLSX("xlsx");

  private static final String CSF_AT = "2034-05-09T08:10:00Z";
  private static final String SERUM_AT = "2034-05-09T08:25:00Z";

  /** Code, name, fluid, value and unit; the CSF albumin is told. */
  private static final List<List<String>> ROWS =
      List.of(
          List.of("1746-7", "Albumin", "CSF", "%s", "mg/L"),
          List.of("1751-7", "Albumin", "Serum", "44", "g/L"),
          List.of("2464-6", "IgG", "CSF", "5.6", "mg/dL"),
          List.of("2465-3", "IgG", "Serum", "10.8", "g/L"),
          List.of("kappa-flc.csf", "Kappa free light chains", "CSF", "<0.3", "mg/L"),
          List.of("36916-5", "Kappa free light chains", "Serum", "13.1", "mg/L"),
          List.of("26465-5", "Leukocytes", "CSF", "9", "10*6/L"),
          List.of("14744-7", "Glucose", "CSF", "3.4", "mmol/L"),
          List.of("14749-6", "Glucose", "Serum", "5.2", "mmol/L"),
          List.of("bands.csfOnly", "CSF-only bands", "CSF", "7", ""),
          List.of("bands.shared", "Shared bands", "CSF", "0", ""),
          List.of("bands.serumOnly", "Serum-only bands", "CSF", "0", ""),
          List.of("FERR", "Ferritin", "CSF", "11", "ug/L"));

  private final String extension;

  DroppedPanel(String extension) {
    this.extension = extension;
  }

  String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  String fileName() {
    return "report." + extension;
  }

  /** The panel with a concentration of albumin in the CSF, in mg/L. */
  byte[] content(String albumin) {
    List<List<String>> rows =
        ROWS.stream()
            .map(row -> row.stream().map(cell -> cell.replace("%s", albumin)).toList())
            .toList();
    return switch (this) {
      case HL7 -> message(rows).getBytes(StandardCharsets.UTF_8);
      case FHIR -> bundle(rows).getBytes(StandardCharsets.UTF_8);
      case CSV ->
          table(rows).stream()
              .map(cells -> String.join(";", cells))
              .collect(Collectors.joining("\n"))
              .getBytes(StandardCharsets.UTF_8);
      case XLSX -> workbook(table(rows));
    };
  }

  private static boolean isLoinc(String code) {
    return Character.isDigit(code.charAt(0));
  }

  private static String message(List<List<String>> rows) {
    StringBuilder text =
        new StringBuilder(
            "MSH|^~\\&|LAB|L|CLINIC|C|20340509101500+0000||ORU^R01^ORU_R01|m-7|T|2.5.1\r"
                + "PID|1||droppel-7^^^L^MR||||20030101|F\r");
    for (String fluid : List.of("CSF", "Serum")) {
      String at = fluid.equals("CSF") ? "20340509081000+0000" : "20340509082500+0000";
      text.append("OBR|1||droppel-panel|panel^Panel^L|||").append(at).append('\r');
      for (List<String> row : rows) {
        if (row.get(2).equals(fluid)) {
          text.append(observation(row)).append('\r');
        }
      }
      text.append("SPM|1|||").append(fluid.equals("CSF") ? "CSF" : "SER").append('\r');
    }
    return text.toString();
  }

  private static String observation(List<String> row) {
    String code = row.getFirst();
    String system = isLoinc(code) ? "LN" : code.equals("FERR") ? "L" : "99CISTERN";
    String value = row.get(3);
    boolean isBelow = value.startsWith("<");
    return "OBX|1|%s|%s^%s^%s||%s|%s|||||F"
        .formatted(
            isBelow ? "SN" : "NM",
            code,
            row.get(1),
            system,
            isBelow ? "<^" + value.substring(1) : value,
            row.get(4));
  }

  private static String bundle(List<List<String>> rows) {
    String patient =
        "{\"resource\":{\"resourceType\":\"Patient\",\"id\":\"p\",\"identifier\":[{\"value\":"
            + "\"droppel-7\"}],\"birthDate\":\"2003-01-01\",\"gender\":\"female\"}}";
    String specimens = specimen("CSF", CSF_AT) + "," + specimen("Serum", SERUM_AT);
    return "{\"resourceType\":\"Bundle\",\"type\":\"collection\",\"identifier\":{\"value\":"
        + "\"droppel-panel\"},\"entry\":["
        + patient
        + ","
        + specimens
        + ","
        + rows.stream().map(DroppedPanel::resource).collect(Collectors.joining(","))
        + "]}";
  }

  private static String specimen(String fluid, String at) {
    return ("{\"resource\":{\"resourceType\":\"Specimen\",\"id\":\"%s\",\"type\":{\"text\":\"%s\"},"
            + "\"collection\":{\"collectedDateTime\":\"%s\"}}}")
        .formatted(fluid, fluid, at);
  }

  private static String resource(List<String> row) {
    String code = row.getFirst();
    String system =
        isLoinc(code)
            ? "http://loinc.org"
            : code.equals("FERR") ? "urn:example" : "https://cistern.example/code";
    String value = row.get(3);
    boolean isBelow = value.startsWith("<");
    String unit =
        row.get(4).isEmpty()
            ? ""
            : ",\"unit\":\"%s\",\"system\":\"http://unitsofmeasure.org\",\"code\":\"%s\""
                .formatted(row.get(4), row.get(4));
    return ("{\"resource\":{\"resourceType\":\"Observation\",\"status\":\"final\",\"subject\":"
            + "{\"reference\":\"Patient/p\"},\"specimen\":{\"reference\":\"Specimen/%s\"},\"code\":"
            + "{\"coding\":[{\"system\":\"%s\",\"code\":\"%s\",\"display\":\"%s\"}]},"
            + "\"valueQuantity\":{%s\"value\":%s%s}}}")
        .formatted(
            row.get(2),
            system,
            code,
            row.get(1),
            isBelow ? "\"comparator\":\"<\"," : "",
            isBelow ? value.substring(1) : value,
            unit);
  }

  private static List<List<String>> table(List<List<String>> rows) {
    List<String> headings =
        List.of(
            "Patient ID",
            "Order",
            "Birth date",
            "Sex",
            "Test",
            "Specimen",
            "Result",
            "Unit",
            "Collected");
    return IntStream.rangeClosed(0, rows.size())
        .mapToObj(i -> i == 0 ? headings : cells(rows.get(i - 1)))
        .toList();
  }

  private static List<String> cells(List<String> row) {
    return List.of(
        "droppel-7",
        "droppel-panel",
        "2003-01-01",
        "female",
        row.get(1),
        row.get(2),
        row.get(3),
        row.get(4),
        row.get(2).equals("CSF") ? CSF_AT : SERUM_AT);
  }

  private static byte[] workbook(List<List<String>> table) {
    StringBuilder rows = new StringBuilder();
    for (int i = 0; i < table.size(); i++) {
      rows.append("<row r=\"").append(i + 1).append("\">");
      for (String cell : table.get(i)) {
        boolean isNumber = cell.matches("\\d+(\\.\\d+)?");
        String text = cell.replace("<", "&lt;");
        rows.append(
            isNumber
                ? "<c><v>" + text + "</v></c>"
                : "<c t=\"inlineStr\"><is><t>" + text + "</t></is></c>");
      }
      rows.append("</row>");
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      part(zip, "xl/workbook.xml", "<workbook><workbookPr/></workbook>");
      part(
          zip,
          "xl/worksheets/sheet1.xml",
          "<worksheet><sheetData>" + rows + "</sheetData></worksheet>");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private static void part(ZipOutputStream zip, String name, String text) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(text.getBytes(StandardCharsets.UTF_8));
    zip.closeEntry();
  }
}
