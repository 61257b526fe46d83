package cistern.conflict;

import cistern.finding.Problem;
import java.util.List;

/** What a low serum value adds to a disagreement about the index. */
public enum SerumHint {
  NONE(""),
  IGG_LOW(" Serum IgG is low, which lifts the index."),
  ALBUMIN_LOW(" Serum albumin is low, which lowers the index."),
  BOTH_LOW(" Serum IgG and serum albumin are both low, so the index can err either way.");

  private final String text;

  SerumHint(String text) {
    this.text = text;
  }

  String text() {
    return text;
  }

  /** The hint in the problems of a panel. */
  static SerumHint of(List<Problem> problems) {
    boolean isIggLow = problems.stream().anyMatch(p -> p.code().equals("serum-igg-low"));
    boolean isAlbuminLow = problems.stream().anyMatch(p -> p.code().equals("serum-albumin-low"));
    if (isIggLow && isAlbuminLow) {
      return BOTH_LOW;
    }
    if (isIggLow) {
      return IGG_LOW;
    }
    return isAlbuminLow ? ALBUMIN_LOW : NONE;
  }
}
