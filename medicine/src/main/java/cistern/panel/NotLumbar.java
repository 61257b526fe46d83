package cistern.panel;

import java.util.Optional;

/** CSF from another place than the lumbar sac, for which no albumin limit holds. */
public record NotLumbar() implements PanelTrouble {

  static Optional<NotLumbar> check(Panel panel) {
    return panel.csf().site().filter(site -> !site.equals("lumbar")).map(site -> new NotLumbar());
  }

  @Override
  public String code() {
    return "not-lumbar";
  }

  @Override
  public String place() {
    return "draws.csf.site";
  }

  @Override
  public String text() {
    return "The fluid was not drawn by lumbar puncture: the limit of the albumin quotient holds for"
        + " lumbar fluid only.";
  }
}
