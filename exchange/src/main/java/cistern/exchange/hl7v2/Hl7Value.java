package cistern.exchange.hl7v2;

import java.util.List;

/** What stands in OBX-5, as one text: by the type that OBX-2 names. */
final class Hl7Value {

  private Hl7Value() {}

  static String of(Segment obx) {
    List<String> repetitions = obx.repetitions(5);
    String type = obx.component(2, 1);
    if (type.equals("SN")) {
      return repetitions.size() == 1 ? numeric(obx) : obx.text(5);
    }
    if (type.equals("CE") || type.equals("CWE") || type.equals("CNE") || type.equals("CF")) {
      String text = obx.component(5, 2);
      return text.isEmpty() ? obx.component(5, 1) : text;
    }
    return obx.text(5);
  }

  /** Comparator, number, separator, number; a grade such as 2+ is no number. */
  private static String numeric(Segment obx) {
    if (obx.component(5, 3).equals("+")) {
      return obx.text(5);
    }
    String sign = obx.component(5, 1);
    String more = obx.component(5, 3) + obx.component(5, 4);
    return (sign.equals("=") ? "" : sign) + obx.component(5, 2) + more;
  }
}
