package cistern.exchange.lab;

import cistern.fact.Provenance;
import cistern.fact.Status;

/**
 * A LOINC code with its official name, which are kept and tested together.
 *
 * @param code with its check digit
 * @param name the long common name
 * @param meaning what it stands for here
 * @param unit a unit of the dimension that the code is for; empty where it has none
 * @param status how well the code and its name are supported
 * @param cited where they can be looked up; nothing where they were recalled
 */
public record LoincCode(
    String code, String name, String meaning, String unit, Status status, Provenance cited) {

  /** Whether the mod-10 check digit (Luhn) of a code is right. */
  public static boolean isWellFormed(String code) {
    if (!code.matches("\\d{1,7}-\\d")) {
      return false;
    }
    String digits = code.substring(0, code.length() - 2);
    int sum = 0;
    for (int i = 0; i < digits.length(); i++) {
      int digit = digits.charAt(digits.length() - 1 - i) - '0';
      int weighed = i % 2 == 0 ? 2 * digit : digit;
      sum += weighed / 10 + weighed % 10;
    }
    return (10 - sum % 10) % 10 == code.charAt(code.length() - 1) - '0';
  }
}
