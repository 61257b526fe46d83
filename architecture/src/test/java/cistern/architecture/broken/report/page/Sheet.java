package cistern.architecture.broken.report.page;

/** Stands on the look of a paper, and may see it. */
public final class Sheet {}
