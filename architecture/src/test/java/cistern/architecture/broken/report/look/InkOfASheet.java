package cistern.architecture.broken.report.look;

import cistern.architecture.broken.report.page.Sheet;

/** A foundation that knows what stands on it. */
public record InkOfASheet(Sheet sheet) {}
