package cistern.clinic.account;

import static cistern.clinic.account.Permission.BE_HERE;
import static cistern.clinic.account.Permission.CARE_AFTER;
import static cistern.clinic.account.Permission.DRAW;
import static cistern.clinic.account.Permission.ENTER_RESULTS;
import static cistern.clinic.account.Permission.KEEP_ACCOUNTS;
import static cistern.clinic.account.Permission.KEEP_RULES;
import static cistern.clinic.account.Permission.READ_REPORT;
import static cistern.clinic.account.Permission.SEE_CASE;
import static cistern.clinic.account.Permission.SEE_DAY;
import static cistern.clinic.account.Permission.SEE_FIGURES;
import static cistern.clinic.account.Permission.SEE_TRAIL;
import static cistern.clinic.account.Permission.SIGN;
import static cistern.clinic.account.Permission.WORK_UP;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * What a person is in the clinic; one account has one role. Nothing is allowed but what is here.
 */
public enum Role {
  CLINICIAN,
  NURSE,
  LABORATORY,
  AUDITOR,
  ADMINISTRATOR;

  private Set<Permission> permissions() {
    return switch (this) {
      case CLINICIAN ->
          Set.of(
              BE_HERE,
              SEE_DAY,
              SEE_CASE,
              WORK_UP,
              DRAW,
              ENTER_RESULTS,
              CARE_AFTER,
              READ_REPORT,
              SEE_FIGURES,
              SIGN,
              KEEP_RULES);
      case NURSE -> Set.of(BE_HERE, SEE_DAY, SEE_CASE, DRAW, CARE_AFTER, READ_REPORT);
      case LABORATORY -> Set.of(BE_HERE, SEE_DAY, SEE_CASE, ENTER_RESULTS);
      case AUDITOR -> Set.of(BE_HERE, SEE_TRAIL);
      case ADMINISTRATOR -> Set.of(BE_HERE, KEEP_ACCOUNTS);
    };
  }

  /** Whether the role may do something. */
  public boolean isAllowed(Permission permission) {
    return permissions().contains(permission);
  }

  /** The word for it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The role of a word, if it is one. */
  public static Optional<Role> parse(String word) {
    return Arrays.stream(values()).filter(r -> r.word().equals(word)).findFirst();
  }
}
