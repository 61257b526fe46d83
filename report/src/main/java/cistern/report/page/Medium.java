package cistern.report.page;

/** Where a page is read: what folds on a screen stands in the open on paper. */
public enum Medium {
  SCREEN,
  PAPER
}
