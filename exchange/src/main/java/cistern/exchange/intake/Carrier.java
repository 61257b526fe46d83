package cistern.exchange.intake;

import java.nio.charset.StandardCharsets;

/** What an input looks like from its first bytes. */
public enum Carrier {
  /** A work-up, or a FHIR resource in JSON. */
  JSON,
  /** A FHIR resource in XML. */
  XML,
  /** Messages of HL7 v2, alone, in a batch or framed. */
  HL7V2,
  /** A workbook, which is a ZIP. */
  WORKBOOK,
  /** A PDF, a picture or an old workbook: text must be copied out of it first. */
  OPAQUE,
  /** Rows of text, or nothing. */
  TEXT;

  /** How many bytes decide. */
  static final int LENGTH = 512;

  /** The carrier of some first bytes. */
  public static Carrier of(byte[] start) {
    String text = new String(start, StandardCharsets.ISO_8859_1);
    if (text.startsWith("PK\u0003\u0004")) {
      return WORKBOOK;
    }
    if (text.startsWith("%PDF")
        || text.startsWith("\u00d0\u00cf\u0011\u00e0")
        || text.startsWith("\u0089PNG")
        || text.startsWith("\u00ff\u00d8\u00ff")) {
      return OPAQUE;
    }
    String plain = text.replaceFirst("^\u00ef\u00bb\u00bf", "").replaceFirst("^[\\s\u000b]+", "");
    if (plain.startsWith("MSH") || plain.startsWith("FHS") || plain.startsWith("BHS")) {
      return HL7V2;
    }
    if (plain.startsWith("<")) {
      return XML;
    }
    return plain.startsWith("{") || plain.startsWith("[") ? JSON : TEXT;
  }
}
