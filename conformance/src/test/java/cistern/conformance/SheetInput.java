package cistern.conformance;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Any bytes as the sheet of a workbook, which a fuzzer would not find through the packing. */
public final class SheetInput {

  private SheetInput() {}

  /** Loads what every input needs. */
  public static void fuzzerInitialize() {
    AnyInput.fuzzerInitialize();
  }

  /** Reads one workbook; a fault is an exception or an error. */
  public static void fuzzerTestOneInput(byte[] sheet) {
    AnyInput.fuzzerTestOneInput(workbook(sheet));
  }

  private static byte[] workbook(byte[] sheet) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      part(zip, "xl/workbook.xml", text("<workbook><workbookPr/></workbook>"));
      part(
          zip,
          "xl/styles.xml",
          text(
              "<styleSheet><cellXfs><xf numFmtId=\"0\"/><xf numFmtId=\"22\"/><xf numFmtId=\"9\"/>"
                  + "</cellXfs></styleSheet>"));
      part(
          zip,
          "xl/sharedStrings.xml",
          text("<sst><si><t>person.id</t></si><si><t>albumin.csf</t></si></sst>"));
      part(zip, "xl/worksheets/sheet1.xml", sheet);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private static byte[] text(String xml) {
    return xml.getBytes(StandardCharsets.UTF_8);
  }

  private static void part(ZipOutputStream zip, String name, byte[] content) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(content);
    zip.closeEntry();
  }
}
